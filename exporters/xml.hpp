// Text inside XML files.
#pragma once

#include <string>
#include <string_view>

namespace coilwright {

/// Text as the content of an element of XML 1.0 (not as a quoted value: quotes stay): `a<b` ->
/// `a&lt;b`. What is no UTF-8, and characters that XML does not allow, become U+FFFD; tabs and line
/// ends become spaces.
std::string xml_text(std::string_view text);

} // namespace coilwright
