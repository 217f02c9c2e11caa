// The types that a source defines, by their qualified names, and what stands in quotation marks.

#pragma once

#include <string>
#include <vector>

namespace overbend::tests {

// Structs, classes, unions and enums at namespace scope, as "overbend::tool::Die", in their order.
// Types that are declared and not defined, that lie in another type or in a nameless namespace, are left out.
std::vector<std::string> types_defined_in(const std::string& source);

// The named namespaces that a source opens below overbend, as "overbend::tool"; each once.
std::vector<std::string> namespaces_in(const std::string& source);

// What stands in quotation marks, escapes as they are; comments, includes and characters are left out.
std::vector<std::string> literals_in(const std::string& source);

std::vector<std::string> words_in(const std::string& text);
int capitals_in(const std::string& name);

}  // namespace overbend::tests
