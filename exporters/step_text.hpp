// STEP physical files (ISO 10303-21, edition 2): values as text, and lines with their numbers.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace coilwright {

/// A value as it stands between commas: these functions make them, StepFile joins them.
using StepValue = std::string;

inline const StepValue step_unset = "$";
/// 'text', in ASCII: Séchoir -> 'S\X2\00E9\X0\choir'. Control characters become spaces, what is no
/// UTF-8 U+FFFD; a quote and a backslash are doubled.
StepValue step_text(std::string_view text);
/// To 1e-6, shortest: 1.5 -> "1.5", 2 -> "2.", -0.0000004 -> "0.". Precondition: |value| < 9e12.
StepValue step_number(double value);
/// .WORD.
StepValue step_word(const std::string& word);
/// (a,b,c)
StepValue step_list(const std::vector<StepValue>& values);
/// TYPE(value): a value that says of which type it is, for properties.
StepValue step_typed(const std::string& type, const StepValue& value);

class StepFile {
public:
    /// Adds a line and gives its number as a value: "#12".
    StepValue add(const std::string& type, const std::vector<StepValue>& values);
    /// The whole file. The header takes text as people wrote it.
    std::string text(const std::string& description, const std::string& file_name,
                     const std::string& program, const std::string& schema) const;

private:
    std::string lines_;
    int last_ = 0;
};

} // namespace coilwright
