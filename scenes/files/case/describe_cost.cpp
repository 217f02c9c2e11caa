// The table [cost]. Every default is the middle of a range in common practice, without a source; the range
// stands in the key's words, and a check compares both.

#include "scenes/files/case/describe.h"

namespace overbend::files {

namespace {

constexpr Range money = from_to(0.0, 1e9);
constexpr Range shop_seconds = from_to(0.0, 1e5);
constexpr Range shop_hours = from_to(0.0, 1e4);
constexpr Range rate = above_to(0.0, 1e6);
constexpr Range share = from_to(0.0, 100.0);  // per cent

using Rates = shop::CostRates;
using Making = shop::MakingRates;

void describe_strip_and_blank(Fields& f, Rates& r, const Rates& u) {
    const auto number = numbers_as_in(f, r, u);
    f.number_if({"strip_price_per_kg", "3.0",
                 "Price of the strip (common practice, no source: 2 to 4 for a metal whose card has none)"},
                money, r.strip_per_kg, "the metal's, or 3");
    number({"scrap_price_per_kg", "0.3", "Price of scrap (common practice, no source: 0.1 to 0.5)"}, money,
           &Rates::scrap_per_kg);
    number({"gap_mm", "2.0", "Gap between blanks (common practice, no source: 1 to 3)"}, from_to(0.0, 1000.0),
           &Rates::gap);
    f.number_or({"end_scrap_percent", "2.0",
                 "Part of the strip lost at its ends and in setting up (common practice, no source: 1 to 3)"},
                from_to(0.0, 90.0), r.end_scrap, {u.end_scrap});
    std::vector<double> sheet;
    if (r.sheet) sheet = {r.sheet->length, r.sheet->width};
    f.numbers_if(
        {"sheet_mm", "[2000.0, 1000.0]", "Length, along the rolling direction, and width of a sheet"},
        above_to(0.0, 20000.0), 2, sheet, "a coil of the part's width");
    r.sheet.reset();
    if (!sheet.empty()) r.sheet = shop::Sheet{sheet[0], sheet[1]};
    f.number_if({"cutting_mm_per_s", "50.0",
                 "Speed of cutting the blank (common practice, no source: 60 to 140 at 1 mm for a metal "
                 "whose card has none)"},
                rate, r.cutting_speed, "the metal's, or 100, by the thickness");
    number({"cutting_most_mm_per_s", "150.0",
            "Greatest speed by the thickness, on short contours (common practice, no source: 100 to 200)"},
           rate, &Rates::cutting_most);
    number({"pierce_s", "0.5",
            "Time per cut-out, and per blank on a sheet (common practice, no source: 0.2 to 0.8)"},
           shop_seconds, &Rates::pierce);
    number({"cutting_price_per_h", "80.0", "Hourly rate of cutting (common practice, no source: 60 to 100)"},
           money, &Rates::cutting_per_hour);
    number({"deburring_s", "3.0", "Deburring time of a part (common practice, no source: 1 to 5)"},
           shop_seconds, &Rates::deburring);
}

void describe_bending(Fields& f, Rates& r, const Rates& u) {
    const auto number = numbers_as_in(f, r, u);
    number({"programming_s", "900.0",
            "Time per batch to program the press, or to call up and check a program (common practice, no "
            "source: 600 to 1200)"},
           shop_seconds, &Rates::programming);
    f.whole_or(
        {"trial_parts", "2",
         "Parts of a batch that are bent on setting up and scrapped (common practice, no source: 1 to 3)"},
        0, 1000000, r.trial_parts, u.trial_parts);
    number({"first_article_s", "600.0",
            "Time per batch to measure and record the first part (common practice, no source: 300 to 900)"},
           shop_seconds, &Rates::first_article);
    number(
        {"lay_in_s", "3.0", "Time per stroke: pick up, load, put down (common practice, no source: 2 to 4)"},
        shop_seconds, &Rates::lay_in);
    f.number_or(
        {"press_price_per_h", "30.0", "Hourly rate of the press (common practice, no source: 20 to 40)"},
        money, r.press_per_hour, {u.press_per_hour, "the press's, or 30"});
    number({"worker_price_per_h", "45.0", "Hourly rate of a worker (common practice, no source: 35 to 55)"},
           money, &Rates::worker_per_hour);
}

void describe_tool_making(Fields& f, Rates& r, const Rates& u) {
    const auto number = numbers_as_in(f, r, u);
    const auto making = numbers_as_in(f, r.making, u.making);
    number({"tool_steel_price_per_kg", "8.0",
            "Price of tool steels that have none of their own (common practice, no source: 5 to 11)"},
           money, &Rates::tool_steel_per_kg);
    making({"design_h", "2.0", "Time to design a tool (common practice, no source: 1 to 3)"}, shop_hours,
           &Making::design);
    making(
        {"cam_h", "1.0", "Time to program the machines for a tool (common practice, no source: 0.5 to 1.5)"},
        shop_hours, &Making::programming);
    number({"design_price_per_h", "70.0",
            "Hourly rate of design and of programs for machines (common practice, no source: 60 to 80)"},
           money, &Rates::design_per_hour);
    making({"block_allowance_mm", "2.5",
            "Allowance of the block on each side of the tool (common practice, no source: 2 to 3)"},
           from_to(0.0, 100.0), &Making::allowance);
    making({"milling_cm3_per_min", "15.0", "Milling rate (common practice, no source: 10 to 20)"}, rate,
           &Making::milling);
    making({"erosion_mm2_per_min", "100.0", "Wire-cutting rate (common practice, no source: 50 to 150)"},
           rate, &Making::erosion);
    making({"grinding_h", "1.5", "Grinding time of a hardened tool (common practice, no source: 1 to 2)"},
           shop_hours, &Making::grinding);
    making({"fitting_h", "1.0", "Fitting time per tool (common practice, no source: 0.5 to 1.5)"}, shop_hours,
           &Making::fitting);
    number({"milling_price_per_h", "60.0", "Hourly rate of milling (common practice, no source: 50 to 70)"},
           money, &Rates::milling_per_hour);
    number(
        {"erosion_price_per_h", "50.0", "Hourly rate of wire cutting (common practice, no source: 40 to 60)"},
        money, &Rates::erosion_per_hour);
    number({"grinding_price_per_h", "60.0", "Hourly rate of grinding (common practice, no source: 50 to 70)"},
           money, &Rates::grinding_per_hour);
    number({"fitting_price_per_h", "60.0", "Hourly rate of fitting (common practice, no source: 50 to 70)"},
           money, &Rates::fitting_per_hour);
    number({"hardening_price_per_kg", "6.0", "Heat treatment (common practice, no source: 4 to 8)"}, money,
           &Rates::hardening_per_kg);
    number({"hardening_least_price", "60.0",
            "Least charge for heat treatment of all tools together (common practice, no source: 40 to 80)"},
           money, &Rates::hardening_least);
    number({"spring_price", "2.0", "Price of a wound spring (common practice, no source: 1 to 3)"}, money,
           &Rates::spring);
    number({"spring_steel_price_per_kg", "30.0", "And per mass of its wire (common practice, no source: 20 to 40)"},
           money, &Rates::spring_per_kg);
    f.whole_or({"tool_batches", "10", "Batches that share the tools"}, 1, 100000, r.tool_batches,
               u.tool_batches);
}

void describe_tool_wear(Fields& f, Rates& r, const Rates& u) {
    const auto number = numbers_as_in(f, r, u);
    number({"regrind_strokes", "60000.0",
            "Strokes of a tool until it is worn; 0: tools do not wear (common practice, no source: 20000 to "
            "100000)"},
           from_to(0.0, 1e9), &Rates::regrind_strokes);
    f.whole_or(
        {"regrinds", "8", "Regrinds of a tool until it is replaced (common practice, no source: 5 to 11)"}, 0,
        1000000, r.regrinds, u.regrinds);
    number({"regrind_h", "1.0", "Grinding time of a regrind (common practice, no source: 0.5 to 1.5)"},
           shop_hours, &Rates::regrind);
}

void describe_rest(Fields& f, Rates& r, const Rates& u) {
    const auto number = numbers_as_in(f, r, u);
    number({"cleaning_price", "0.02", "Cleaning of a part (common practice, no source: 0.01 to 0.03)"}, money,
           &Rates::cleaning);
    number({"inspection_s", "10.0", "Inspection time of a part (common practice, no source: 5 to 15)"},
           shop_seconds, &Rates::inspection);
    number({"inspected_percent", "5.0",
            "Part of the batch that is inspected (common practice, no source: 2 to 8)"},
           share, &Rates::inspected);
    number({"rejected_percent", "2.0",
            "Part of what is made that is rejected (common practice, no source: 1 to 3)"},
           from_to(0.0, 90.0), &Rates::rejected);
    number({"packaging_price", "0.02", "Packaging of a part (common practice, no source: 0.01 to 0.03)"},
           money, &Rates::packaging);
    number({"storage_price_per_month", "0.002",
            "Storage cost of a part per month (common practice, no source: 0.001 to 0.003)"},
           money, &Rates::storage);
    number({"storage_months", "3.0", "Average storage time (common practice, no source: 1 to 5)"},
           from_to(0.0, 1200.0), &Rates::storage_months);
    number({"energy_price_per_kWh", "0.25", "Electricity (common practice, no source: 0.15 to 0.35)"}, money,
           &Rates::energy_per_kWh);
    f.number_or(
        {"idle_kW", "1.0", "Power of the press while it is manned (common practice, no source: 0.5 to 1.5)"},
        from_to(0.0, 1e4), r.idle_power, {u.idle_power, "the press's, or 1"});
    number({"efficiency_percent", "30.0",
            "Efficiency of the ram's drive (common practice, no source: 20 to 40)"},
           above_to(0.0, 100.0), &Rates::efficiency);
    number({"overhead_percent", "15.0",
            "Overhead on all other costs: administration and sale (common practice, no source: 10 to 20)"},
           from_to(0.0, 1000.0), &Rates::overhead);
}

}  // namespace

void describe(Fields& f, CostTable& t) {
    f.text_or({"money", "\"EUR\"", "Name of the currency"}, t.rates.money, t.usual.money);
    f.whole_or({"batch", "500", "Parts in a batch"}, 1, 100000000, t.rates.batch, t.usual.batch);
    describe_strip_and_blank(f, t.rates, t.usual);
    describe_bending(f, t.rates, t.usual);
    describe_tool_making(f, t.rates, t.usual);
    describe_tool_wear(f, t.rates, t.usual);
    describe_rest(f, t.rates, t.usual);
}

}  // namespace overbend::files
