// TOML as text for people to read. For the writers in scenes/case only.

#pragma once

#include <string>
#include <vector>

namespace overbend::scenes {

// The shortest decimal number that is this one; always with a point or an exponent.
std::string number_text(double value);
// In degrees, the shortest that comes back as this angle in rad to the last bit but one.
std::string degrees_text(double angle);
std::string quoted_text(const std::string& text);

// Keys and values on one line: { a = 1.0, b = "x" }.
class Inline {
  public:
    Inline& number(const char* key, double value) { return put(key, number_text(value)); }
    Inline& degrees(const char* key, double angle) { return put(key, degrees_text(angle)); }
    Inline& text(const char* key, const std::string& value) { return put(key, quoted_text(value)); }
    Inline& put(const char* key, const std::string& value);
    std::string str() const { return "{ " + body_ + " }"; }

  private:
    std::string body_;
};

// Keys and values below one another.
class Lines {
  public:
    Lines& number(const char* key, double value) { return put(key, number_text(value)); }
    Lines& degrees(const char* key, double angle) { return put(key, degrees_text(angle)); }
    Lines& text(const char* key, const std::string& value) { return put(key, quoted_text(value)); }
    Lines& put(const char* key, const std::string& value);
    Lines& header(const std::string& name);  // "[strip]", after an empty line
    Lines& raw(const std::string& line);
    // A list with an entry a line.
    Lines& list(const char* key, const std::vector<std::string>& entries);
    const std::string& str() const { return text_; }

  private:
    std::string text_;
};

}  // namespace overbend::scenes
