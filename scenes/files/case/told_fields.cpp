#include "scenes/files/case/told_fields.h"

#include "scenes/files/case/key_list.h"
#include "scenes/files/case/nearest_key.h"
#include "sim/words.h"

namespace overbend::files {

namespace {

class Teller : public Fields {
  public:
    std::vector<ToldField> found;

    void number(const Key& key, const Range&, double& value) override {
        const std::string unit = unit_of(key.name);
        tell(key, size_words(in_file(key.name, value), unit == "degrees" ? "deg" : unit));
    }
    void number_or(const Key& key, const Range& range, double& value, const Usual&) override {
        number(key, range, value);
    }
    void number_or_word(const Key& key, const Range& range, const char* word, std::optional<double>& value,
                        bool& worded) override {
        if (worded)
            tell(key, word);
        else
            number(key, range, *value);
    }
    void whole(const Key& key, int, int, int& value) override { tell(key, std::to_string(value)); }
    void truth(const Key& key, bool& value) override { tell(key, value ? "yes" : "no"); }
    void text(const Key& key, std::string& value) override { tell(key, value); }
    void texts(const Key& key, Words& value) override { tell(key, listed(value)); }
    void numbers(const Key& key, const Range&, std::size_t, std::vector<double>& value) override {
        std::string text;
        for (const double each : value) text += (text.empty() ? "" : ", ") + size_words(each, "");
        tell(key, text);
    }
    void choice(const Key& key, const Words& choices, int& chosen) override {
        tell(key, choices[static_cast<std::size_t>(chosen)]);
    }
    bool stands(const Key& key, const Usual& usual, bool given) override {
        if (!given) tell(key, usual.words ? usual.words : size_words(in_file(key.name, usual.value), ""));
        return given;
    }
    void within(const Key& key, const Show& show, const Keys&) override {
        inside(" of " + label_of(key.name), [&] { show(*this); });
    }
    void list(const Key& key, std::size_t count, const std::function<void(std::size_t)>&,
              const ShowEach& show, const Keys&) override {
        const std::string label = label_of(key.name);
        for (std::size_t i = 0; i < count; ++i)
            inside(count > 1 ? words(" of %s %zu", label.substr(0, label.size() - 1).c_str(), i + 1) : "",
                   [&] { show(*this, i); });
    }

  private:
    void tell(const Key& key, const std::string& text) { found.push_back({label_of(key.name) + of_, text}); }
    template <class See>
    void inside(const std::string& of, const See& see) {
        const std::string before = of_;
        of_ = of + before;
        see();
        of_ = before;
    }

    std::string of_;
};

}  // namespace

std::vector<ToldField> fields_told(const Fields::Show& show) {
    Teller teller;
    show(teller);
    return teller.found;
}

std::string size_words(double value, const std::string& unit) {
    // "88", not "88.0000"; without the rounding noise of an angle's last digits
    const std::string number = words("%.6g", value);
    return (number == "-0" ? "0" : number) + (unit.empty() ? "" : " " + unit);
}

}  // namespace overbend::files
