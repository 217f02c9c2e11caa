#include "scenes/files/study/describe_study.h"

namespace overbend::files {

namespace {

constexpr Range any_number = from_to(-1e6, 1e6);
constexpr Range distance = above_to(0.0, 1e6);
constexpr int most_samples = 10'000'000;

const char* const of_words =
    "What varies: thickness_mm, strength, modulus, r_value, friction, ram_mm, ram_zero_mm, gauge_mm, "
    "blank_length_mm, or with tool a size of that tool";

void vary(Fields& f, VaryEntry& t) {
    f.text({"of", "\"thickness_mm\"", of_words}, t.of);
    f.text_or({"tool", "\"punch 60\"", "The tool whose size it is, by its name"}, t.tool, "");
    f.text_or({"step", "\"lip\"", "Of ram_mm and gauge_mm: the step, where it is one alone"}, t.step, "",
              "every step, each on its own");
}

}  // namespace

void describe(Fields& f, StudyTop& t) {
    f.whole({"format", "1", "File format; 1 is the only one"}, 1, 1, t.format);
    f.whole_or({"samples", "512", "Points that are drawn; a power of two fills the ranges most evenly"}, 2,
               most_samples, t.samples, 512);
    f.whole_or({"series", "1", "Another number draws other points"}, 1, 1'000'000, t.series, 1);
    f.truth_or_false({"scatter_alone", "true", "Leaves out the rows for the importance of each input"},
                     t.no_importance);
    f.word_or({"stops", "\"solved\"",
               "Whether stops are held where the nominal strip needs them, or solved again in every row of a "
               "grid"},
              {"held", "solved"}, t.stops, Stops::held);
    f.elsewhere({"run", "", "How it is computed"}, false);
    f.elsewhere({"input", "", "A thing that varies by chance; any number of them"}, false);
    f.elsewhere({"correlation", "", "Two inputs that vary together; any number of them"}, false);
    f.elsewhere({"grid", "", "A thing that takes certain values; one to three of them, without inputs"},
                false);
    f.elsewhere({"set", "", "A step that is set otherwise than the nominal strip needs; any number"}, false);
}

void describe(Fields& f, StudyRun& t) {
    f.whole_or({"layers", "11", "Layers through the thickness"}, 5, 41, t.layers, 7);
    f.number_or({"elements_per_thickness", "8.0", "Elements in the bends, for each thickness of length"},
                from_to(1.0, 16.0), t.elements_per_thickness, {4.0});
}

void describe(Fields& f, Normal& t) {
    f.number({"mean", "1.2", "Mean"}, any_number, t.mean);
    f.number({"deviation", "0.02", "Standard deviation"}, distance, t.deviation);
    f.number_if({"within", "0.06", "Cut off at this distance from the mean, either way"}, distance, t.within,
                "not cut off");
}
void describe(Fields& f, Uniform& t) {
    f.number({"from", "0.05", "Least value"}, any_number, t.from);
    f.number({"to", "0.15", "Greatest value"}, any_number, t.to);
}
void describe(Fields& f, Triangular& t) {
    f.number({"from", "1.15", "Least value"}, any_number, t.from);
    f.number({"peak", "1.2", "Most likely value"}, any_number, t.peak);
    f.number({"to", "1.25", "Greatest value"}, any_number, t.to);
}
void describe(Fields& f, DensityTable& t) {
    f.numbers({"value", "[1.15, 1.2, 1.25]", "Values, rising; two at least"}, any_number, 0, t.value);
    f.numbers({"density", "[0.0, 3.0, 0.0]", "How likely each is against the others; straight between them"},
              from_to(0.0, 1e9), 0, t.density);
}

void describe(Fields& f, InputEntry& t) {
    vary(f, t);
    const char* const one = "another one, or what is usual";
    f.table_if({"normal", "{ mean = 1.2, deviation = 0.02 }", "Normal distribution"}, t.normal, one);
    f.table_if({"uniform", "{ from = 0.05, to = 0.15 }", "Uniform distribution"}, t.uniform, one);
    f.table_if({"triangular", "{ from = 1.15, peak = 1.2, to = 1.25 }", "Triangular distribution"},
               t.triangular, one);
    f.table_if({"table", "{ value = [1.15, 1.2, 1.25], density = [0.0, 3.0, 0.0] }", "Density by points"},
               t.table, one);
}

void describe(Fields& f, GridEntry& t) {
    vary(f, t);
    f.numbers({"values", "[0.5, 1.0, 1.5]", "The values that it takes, in this order"}, any_number, 0,
              t.values);
}

void describe(Fields& f, CorrelationEntry& t) {
    f.texts({"of", "[\"thickness_mm\", \"strength\"]", "Two inputs, by what varies"}, t.of);
    f.number({"coefficient", "0.4", "Correlation of their normal scores"}, above_below(-1.0, 1.0),
             t.coefficient);
}

void describe(Fields& f, SetEntry& t) {
    f.text({"step", "\"lip\"", "Name of the step"}, t.step);
    f.number({"deeper_mm", "0.02", "How far the ram goes beyond the stop of the nominal strip"},
             from_to(-10.0, 10.0), t.deeper);
}

}  // namespace overbend::files
