// A table of a file, described once: a function  void describe(Fields&, T&)  shows every key of T's table in
// turn, with its range, what holds when it is left out, and words for people. What reads a table, writes,
// lists or compares it is a Fields.
//
// Units  stand at the end of a key's name. In a case, what is in _deg in the file is in rad, and what is in
//        _percent is a share of one; all else is as written.

#pragma once

#include <algorithm>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "scenes/files/case/range.h"

namespace overbend::files {

struct Key {
    const char* name;     // "nose_radius_mm"
    const char* example;  // its value as it may stand in a file: "1.5"
    const char* words;    // what it is: "Radius of the nose"
};

// What holds when a key is left out.
struct Usual {
    double value = 0.0;           // as in the case
    const char* words = nullptr;  // for one that follows from other keys, or is no number
};

// A key as plain data.
struct KeyEntry {
    std::string table;  // within the one that was shown: "faces"; empty: of that one itself
    std::string kind;   // of several sets of keys, the one that it belongs to alone: "vee-punch"
    std::string name;
    std::string unit;    // "mm"; empty: none
    std::string values;  // "above 0, at most 2000", "left, right", "a text"
    bool required = false;
    std::string usual;  // what holds when it is left out; empty when required
    std::string words, example;
    Range range = {};  // of a number
};
using Keys = std::vector<KeyEntry>;

// A T before anything is read into it.
template <class T>
T fresh() {
    return T{};
}

// The keys of T's table and of those within it.
template <class T>
const Keys& keys_of();

class Fields {
  public:
    using Show = std::function<void(Fields&)>;                   // shows the keys of one table
    using ShowEach = std::function<void(Fields&, std::size_t)>;  // of one of several

    virtual ~Fields() = default;

    // ---- what a Fields does with a key that stands there; here: nothing

    virtual void number(const Key&, const Range&, double&) {}
    // A number under one of two keys; under the other it is so much less.
    virtual void number_either(const Key& key, const Key& /*other*/, const Range& range, double& value,
                               double /*less*/) {
        number(key, range, value);
    }
    // A number, or this word instead of one.
    virtual void number_or_word(const Key&, const Range&, const char* /*word*/,
                                std::optional<double>& /*number*/, bool& /*worded*/) {}
    virtual void whole(const Key&, int /*low*/, int /*high*/, int&) {}
    virtual void truth(const Key&, bool&) {}
    virtual void text(const Key&, std::string&) {}
    virtual void texts(const Key&, Words&) {}
    // count: how many; 0: as many as there are
    virtual void numbers(const Key&, const Range&, std::size_t /*count*/, std::vector<double>&) {}
    virtual void choice(const Key&, const Words&, int& /*chosen*/) {}
    virtual void sources(const Key&, std::vector<std::pair<std::string, std::string>>&) {}
    // A table that its reader and writer see to by themselves.
    virtual void elsewhere(const Key&, bool /*required*/) {}
    virtual void within(const Key&, const Show&, const Keys&) {}
    // A name, or a table whose key `tool` is that name.
    virtual void name_or_within(const Key&, std::string&, const Show&, const Keys&) {}
    virtual void list(const Key&, std::size_t /*count*/, const std::function<void(std::size_t)>& /*resize*/,
                      const ShowEach&, const Keys&) {}
    // Which of several sets of keys stands there: by the word of the key or, without a name, by the first key
    // that only one of them has. False: not to be shown.
    virtual bool choose(const Key&, const Words&, int& /*chosen*/, const ShowEach& /*show_fresh*/) {
        return true;
    }
    // Whether a key that may be left out stands there; it is shown next. given: it is not as usual.
    virtual bool stands(const Key&, const Usual&, bool given) { return given; }

    // ---- keys that may be left out

    virtual void number_or(const Key& key, const Range& range, double& value, const Usual& usual) {
        shown_or(key, usual, value, usual.value, [&] { number(key, range, value); });
    }
    void number_if(const Key& key, const Range& range, std::optional<double>& value,
                   const char* without = "not known") {
        optional(key, value, without, [&] { number(key, range, *value); });
    }
    void number_or_word_if(const Key& key, const Range& range, const char* word,
                           std::optional<double>& number, bool& worded, const char* without) {
        if (!stands(key, {0.0, without}, number || worded)) return number.reset(), void(worded = false);
        number_or_word(key, range, word, number, worded);
    }
    void whole_or(const Key& key, int low, int high, int& value, int usual) {
        shown_or(key, {static_cast<double>(usual)}, value, usual, [&] { whole(key, low, high, value); });
    }
    void whole_if(const Key& key, int low, int high, std::optional<int>& value, const char* without) {
        optional(key, value, without, [&] { whole(key, low, high, *value); });
    }
    void numbers_if(const Key& key, const Range& range, std::size_t count, std::vector<double>& value,
                    const char* without = "none") {
        shown_or(key, {0.0, without}, value, {}, [&] { numbers(key, range, count, value); });
    }
    void truth_or_false(const Key& key, bool& value) {
        shown_or(key, {0.0, "false"}, value, false, [&] { truth(key, value); });
    }
    void text_or(const Key& key, std::string& value, const std::string& usual, const char* without = "none") {
        shown_or(key, {0.0, usual.empty() ? without : usual.c_str()}, value, usual,
                 [&] { text(key, value); });
    }
    void sources_if(const Key& key, std::vector<std::pair<std::string, std::string>>& value) {
        shown_or(key, {0.0, "none"}, value, {}, [&] { sources(key, value); });
    }
    // One of the choices; empty: not given.
    void choice_if(const Key& key, const Words& choices, std::string& value) {
        if (!stands(key, {0.0, "not known"}, !value.empty())) return value.clear();
        const auto found = std::find(choices.begin(), choices.end(), value);
        int chosen = found == choices.end() ? 0 : static_cast<int>(found - choices.begin());
        choice(key, choices, chosen);
        value = choices[static_cast<std::size_t>(chosen)];
    }

    // ---- a word for each value of an enum, in its order

    template <class Enum>
    void word(const Key& key, const Words& choices, Enum& value) {
        int chosen = static_cast<int>(value);
        choice(key, choices, chosen);
        value = static_cast<Enum>(chosen);
    }
    template <class Enum>
    void word_or(const Key& key, const Words& choices, Enum& value, Enum usual) {
        shown_or(key, {0.0, choices[static_cast<std::size_t>(usual)].c_str()}, value, usual,
                 [&] { word(key, choices, value); });
    }

    // ---- tables within the table

    template <class T>
    void table(const Key& key, T& value) {
        within(
            key, [&](Fields& f) { describe(f, value); }, keys_of<T>());
    }
    template <class T>
    void table_if(const Key& key, std::optional<T>& value, const char* without = "none") {
        optional(key, value, without, [&] { table(key, *value); });
    }
    // One whose keys may all be left out.
    template <class T>
    void table_or(const Key& key, T& value, const char* without) {
        if (stands(key, {0.0, without}, true)) table(key, value);
    }
    template <class T>
    void tables(const Key& key, std::vector<T>& values) {
        list(
            key, values.size(), [&](std::size_t count) { values.resize(count, fresh<T>()); },
            [&](Fields& f, std::size_t i) { describe(f, values[i]); }, keys_of<T>());
    }
    template <class T>
    void tables_if(const Key& key, std::vector<T>& values) {
        if (stands(key, {0.0, "none"}, !values.empty()))
            tables(key, values);
        else
            values.clear();
    }
    template <class T>
    void name_or_table(const Key& key, T& value) {
        name_or_within(
            key, value.tool, [&](Fields& f) { describe(f, value); }, keys_of<T>());
    }
    template <class T>
    void name_or_table_if(const Key& key, std::optional<T>& value) {
        optional(key, value, "none", [&] { name_or_table(key, *value); });
    }

    // One of several sets of keys, each described as an alternative; see choose.
    template <class... T>
    void one_of(const Key& key, const Words& words, std::variant<T...>& value) {
        one_of(key, words, value, [](Fields& f, std::variant<T...>& shown) {
            std::visit([&](auto& held) { describe(f, held); }, shown);
        });
    }
    template <class... T, class ShowValue>
    void one_of(const Key& key, const Words& words, std::variant<T...>& value, const ShowValue& show) {
        const auto alternative = [](int wanted) {
            std::variant<T...> made{fresh<std::variant_alternative_t<0, std::variant<T...>>>()};
            int i = 0;
            ((i++ == wanted ? void(made = fresh<T>()) : void()), ...);
            return made;
        };
        int chosen = static_cast<int>(value.index());
        const bool shown = choose(key, words, chosen, [&](Fields& f, std::size_t i) {
            auto made = alternative(static_cast<int>(i));
            show(f, made);
        });
        if (!shown) return;
        if (chosen != static_cast<int>(value.index())) value = alternative(chosen);
        show(*this, value);
    }

  private:
    // as: what holds when the key is left out.
    template <class T, class See>
    void shown_or(const Key& key, const Usual& usual, T& value, const T& as, const See& see) {
        if (stands(key, usual, value != as))
            see();
        else
            value = as;
    }
    template <class T, class See>
    void optional(const Key& key, std::optional<T>& value, const char* without, const See& see) {
        if (!stands(key, {0.0, without}, value.has_value())) return value.reset();
        if (!value) value.emplace();
        see();
    }
};

// Shows numbers of a struct that are as in `usual` where they are left out; both must stay where they are.
template <class T>
auto numbers_as_in(Fields& f, T& value, const T& usual) {
    return [&f, &value, &usual](const Key& key, const Range& range, double T::*number) {
        f.number_or(key, range, value.*number, {usual.*number});
    };
}

Keys keys_shown(const Fields::Show& show);

template <class T>
const Keys& keys_of() {
    static const Keys keys = keys_shown([](Fields& f) {
        T made = fresh<T>();
        describe(f, made);
    });
    return keys;
}

}  // namespace overbend::files
