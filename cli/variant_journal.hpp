// A file that keeps the variants worked out so far, so that a stopped run goes on where it was.
#pragma once

#include "geometry/variants/variants.hpp"

#include <fstream>
#include <string>
#include <vector>

namespace coilwright {

/// One line a variant, flushed as it comes: whatever ends the run, whole lines count when it goes
/// on.
class VariantJournal {
public:
    /// Opens or makes the file and reads what it holds. `fault` (one sentence, empty: none) says
    /// that it cannot be, or that it is of another study: another design, works file, choice or
    /// version.
    VariantJournal(const std::string& path, const VariantStudy& study,
                   const std::string& works_text);

    const std::string& fault() const { return fault_; }
    /// By variant, whether the journal held it; then its result is in `results`.
    const std::vector<bool>& held() const { return held_; }
    std::vector<VariantResult>& results() { return results_; }

    /// False: it could not be written.
    bool add(std::size_t index, const VariantResult& result);

private:
    void read_line(const std::string& line);

    std::string fault_;
    std::vector<bool> held_;
    std::vector<VariantResult> results_;
    std::ofstream file_;
};

} // namespace coilwright
