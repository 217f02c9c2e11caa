#include "scenes/files/case/key_list.h"

#include <algorithm>
#include <array>

#include "scenes/files/case/nearest_key.h"
#include "scenes/files/case/strict_table.h"
#include "scenes/files/case/toml_text.h"
#include "sim/units.h"

namespace overbend::files {

namespace {

struct Unit {
    const char* ending;
    const char* words;
};
constexpr std::array<Unit, 22> units = {{{"_mm_per_s", "mm/s"},
                                         {"_cm3_per_min", "cm3 per minute"},
                                         {"_mm2_per_min", "mm2 per minute"},
                                         {"_mm2_per_s", "mm2/s"},
                                         {"_kN_per_m", "kN per metre"},
                                         {"_kN_m", "kN m"},
                                         {"_N_per_mm", "N per mm of strip width"},
                                         {"_N_per_mm2", "N/mm per mm of strip width"},
                                         {"_kg_m3", "kg/m3"},
                                         {"_per_kWh", "per kWh"},
                                         {"_per_kg", "per kg"},
                                         {"_percent", "per cent"},
                                         {"_HRC", "Rockwell C"},
                                         {"_HV", "Vickers"},
                                         {"_J", "J"},
                                         {"_kW", "kW"},
                                         {"_mm", "mm"},
                                         {"_deg", "degrees"},
                                         {"_kN", "kN"},
                                         {"_MPa", "MPa"},
                                         {"_N", "N"},
                                         {"_s", "seconds"}}};

bool ends_with(const std::string& text, const std::string& ending) {
    return text.size() > ending.size() &&
           text.compare(text.size() - ending.size(), ending.size(), ending) == 0;
}

const Unit* unit_at_end(const std::string& key) {
    for (const Unit& unit : units)
        if (ends_with(key, unit.ending)) return &unit;
    return nullptr;
}

class Lister : public Fields {
  public:
    Keys found;

    void number(const Key& key, const Range& range, double&) override {
        add(key, range_words(range)).range = range;
    }
    void number_either(const Key& key, const Key& other, const Range& range, double& value, double) override {
        stands(key, {0.0, other.name}, false);
        number(key, range, value);
        stands(other, {0.0, key.name}, false);
        number(other, range, value);
    }
    void number_or_word(const Key& key, const Range& range, const char* word, std::optional<double>&,
                        bool&) override {
        add(key, range_words(range) + ", or \"" + word + "\"").range = range;
    }
    void whole(const Key& key, int low, int high, int&) override {
        add(key, "whole, " + range_words(from_to(low, high))).range = from_to(low, high);
    }
    void truth(const Key& key, bool&) override { add(key, "true or false"); }
    void text(const Key& key, std::string&) override { add(key, "a text"); }
    void texts(const Key& key, Words&) override { add(key, "a list of texts"); }
    void numbers(const Key& key, const Range& range, std::size_t count, std::vector<double>&) override {
        const std::string many = count == 2 ? "two numbers " : "a list of numbers ";
        add(key, many + range_words(range)).range = range;
    }
    void choice(const Key& key, const Words& choices, int&) override { add(key, listed(choices)); }
    void sources(const Key& key, std::vector<std::pair<std::string, std::string>>&) override {
        add(key, "a table of texts");
    }
    void elsewhere(const Key& key, bool required) override {
        KeyEntry& entry = add(key, "a table");
        entry.required = required;
        if (!required) entry.usual = "none";
    }
    void within(const Key& key, const Show&, const Keys& keys) override {
        add(key, "a table");
        take(keys, key.name, "");
    }
    void name_or_within(const Key& key, std::string&, const Show&, const Keys& keys) override {
        add(key, "a name, or a table");
        take(keys, key.name, "");
    }
    void list(const Key& key, std::size_t, const std::function<void(std::size_t)>&, const ShowEach&,
              const Keys& keys) override {
        add(key, "a list of tables");
        take(keys, key.name, "");
    }
    bool choose(const Key& key, const Words& kinds, int&, const ShowEach& fresh) override {
        if (*key.name) add(key, listed(kinds));
        for (std::size_t i = 0; i < kinds.size(); ++i)
            take(keys_shown([&](Fields& f) { fresh(f, i); }), "", kinds[i]);
        return false;
    }
    bool stands(const Key& key, const Usual& usual, bool) override {
        left_out_ = true;
        usual_ = usual.words ? usual.words : worked_out(in_file(key.name, usual.value));
        return true;
    }

  private:
    KeyEntry& add(const Key& key, const std::string& values) {
        found.push_back(
            {"", "", key.name, unit_of(key.name), values, !left_out_, usual_, key.words, key.example});
        left_out_ = false;
        usual_.clear();
        return found.back();
    }
    void take(Keys inner, const std::string& table, const std::string& kind) {
        for (KeyEntry& key : inner) {
            if (!table.empty()) key.table = table + (key.table.empty() ? "" : "." + key.table);
            if (!kind.empty()) key.kind = key.kind.empty() ? kind : kind + ", " + key.kind;
            found.push_back(std::move(key));
        }
    }

    bool left_out_ = false;  // the next key may be
    std::string usual_;
};

Words names_where(const Keys& keys, const std::function<bool(const KeyEntry&)>& counts) {
    Words names;
    for (const KeyEntry& key : keys)
        if (key.table.empty() && counts(key) && std::count(names.begin(), names.end(), key.name) == 0)
            names.push_back(key.name);
    return names;
}

}  // namespace

Keys keys_shown(const Fields::Show& show) {
    Lister lister;
    show(lister);
    return lister.found;
}

Words key_names(const Keys& keys) {
    return names_where(keys, [](const KeyEntry&) { return true; });
}

Words key_names(const Keys& keys, const std::string& kind) {
    return names_where(keys, [&](const KeyEntry& key) { return key.kind.empty() || key.kind == kind; });
}

std::string unit_of(const std::string& key) {
    const Unit* const unit = unit_at_end(key);
    return unit ? unit->words : ends_with(key, "_per_h") ? "per hour" : ends_with(key, "_h") ? "hours" : "";
}

double in_case(const std::string& key, double value) {
    return ends_with(key, "_deg") ? value * pi / 180.0 : ends_with(key, "_percent") ? value / 100.0 : value;
}

double in_file(const std::string& key, double value) {
    const double about = ends_with(key, "_deg")       ? value * 180.0 / pi
                         : ends_with(key, "_percent") ? value * 100.0
                                                      : value;
    if (about == value) return value;
    return roundest(about, [&](double found) { return in_case(key, found) == value; });
}

std::string label_of(const std::string& key) {
    const Unit* const unit = unit_at_end(key);
    std::string label = unit ? key.substr(0, key.size() - std::string(unit->ending).size()) : key;
    std::replace(label.begin(), label.end(), '_', ' ');
    return label;
}

}  // namespace overbend::files
