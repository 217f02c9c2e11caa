// Words within XML and HTML: whatever they are, the document is well-formed.

#pragma once

#include <string>

namespace overbend::picture {

// As text of an element or a quoted attribute; bytes that are not UTF-8, control letters and what XML has no
// letter for become U+FFFD.
std::string escaped(const std::string& text);

}  // namespace overbend::picture
