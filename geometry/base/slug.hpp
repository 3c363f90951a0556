// One name per part that is legal in every file format.
#pragma once

#include <map>
#include <string>
#include <string_view>

namespace coilwright {

/// Upper-case slug `[A-Z][A-Z0-9_]*` of at most 31 characters: "vault" -> "VAULT",
/// "porch-2" -> "PORCH_2". Other characters become '_'; a leading digit gets 'X' before it.
std::string slug(std::string_view text);

/// Slug of a part of a course: ("vault", 7, "T2") -> "VAULT_C07_T2".
std::string course_slug(std::string_view element, int course, std::string_view part);

/// Gives each part a slug of its own: a repeat gets "_2", "_3", kept within 31 characters.
class SlugTable {
public:
    std::string unique(std::string_view wanted);

private:
    std::map<std::string, int> used_;
};

} // namespace coilwright
