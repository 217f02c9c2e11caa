// TOML as people write it: keys in the order they are given, small tables on one line, numbers in the fewest
// digits that read back exactly. (The library's own writer sorts keys and has one layout.)

#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace overbend::files {

// 1.0, 0.05, 1e-07; finite.
std::string number_text(double value);
// The number of the fewest digits, up to seventeen, near the value that reads back as it should; the value in
// fifteen digits where there is none.
double roundest(double value, const std::function<bool(double)>& reads_back);
// In quotes, with quotes, backslashes and control characters escaped.
std::string quoted(std::string_view text);
// Every line behind "# "; no control characters. Ends with a line break; empty stays empty.
std::string comment_text(const std::string& comment);

// The entries of one table.
class Entries {
  public:
    Entries& text(std::string_view key, std::string_view value);
    Entries& as_is(std::string_view key, const std::string& toml);  // a value that is TOML already

    std::size_t count() const { return lines_.size(); }
    bool empty() const { return lines_.empty(); }
    std::string lines() const;         // "key = value\n" each
    std::string inline_table() const;  // "{ key = value, key = value }"

  private:
    std::vector<std::string> lines_;
};

// "[ a, b ]", or an entry a line where that is too long or there are too many.
std::string list_text(const std::vector<std::string>& entries);
// "[1.0, 2.5]", "["a", "b"]".
std::string numbers_text(const std::vector<double>& values);
std::string texts_text(const std::vector<std::string>& texts);

}  // namespace overbend::files
