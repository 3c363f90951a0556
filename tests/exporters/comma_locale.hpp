// A locale in which decimals are commas and thousands have points, for as long as it lives.
#pragma once

#include <clocale>
#include <locale>
#include <string>

namespace coilwright {

class CommaLocale {
public:
    CommaLocale() : c_(std::setlocale(LC_ALL, nullptr)) {
        previous_ = std::locale::global(std::locale(std::locale(), new Commas));
        // The C library's own, where one is installed.
        for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "es_ES.UTF-8"})
            if (std::setlocale(LC_ALL, name))
                break;
    }
    ~CommaLocale() {
        std::locale::global(previous_);
        std::setlocale(LC_ALL, c_.c_str());
    }
    CommaLocale(const CommaLocale&) = delete;
    CommaLocale& operator=(const CommaLocale&) = delete;

private:
    struct Commas : std::numpunct<char> {
        char do_decimal_point() const override { return ','; }
        char do_thousands_sep() const override { return '.'; }
        std::string do_grouping() const override { return "\3"; }
    };
    std::string c_;
    std::locale previous_;
};

} // namespace coilwright
