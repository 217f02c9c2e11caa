// The options of `bend`, each described once: name, words, unit, range, and the kinds of bend that take it.
//
// Units  as on the command line: mm, deg, N per mm of strip width.

#pragma once

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "scenes/commands/options.h"
#include "scenes/job/run/strip_bends.h"

namespace overbend::commands {

enum class BendKind { vee, offset, channel, wiping, hem, draw };
const char* kind_word(BendKind kind);

// In the order of BendKind.
using AnyBend = std::variant<job::VeeBend, job::OffsetBend, job::ChannelBend, job::WipingBend, job::HemBend,
                             job::DrawBend>;

struct BendOptions {
    BendKind kind = BendKind::vee;
    std::string material;
    double thickness = 0.0;
    double friction = 0.1;
    std::optional<double> width;
    int layers = 15;
    bool weighs = false;
    std::map<std::string, std::optional<double>> numbers;  // by the option's name
    std::map<std::string, std::vector<double>> springs;    // wire, coil, turns, shear modulus
    std::optional<files::ClampOn> clamp_on;
    bool curve = false;
    Output output;

    std::optional<double> number(const std::string& option) const { return numbers.at(option); }
    double number_or(const std::string& option, double fallback) const {
        return numbers.at(option).value_or(fallback);
    }
};

// "12.5 mm".
std::string millimetres(double length);

// given must stay where it is.
void add_bend_options(Command& command, BendOptions& given);

// What single options cannot know of one another: what belongs to the kind and what it needs, one stop,
// lengths that suit the thickness.
void check_together(const BendOptions& given);

// The sizes that the options give; strip and springs are left as they are.
AnyBend bend_of(const BendOptions& given);

// The spring behind the "pad" or the "clamp"; nothing when none of its options is given.
std::optional<tool::Spring> spring_of(const BendOptions& given, const std::string& behind);

}  // namespace overbend::commands
