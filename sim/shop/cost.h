// What a part costs, in any currency: per part, per batch, over the size of the batch.
//
// A batch of n costs  fixed + n variable, a part  variable + fixed / n. Every figure is a Traced one, with
// its formula and its inputs. All of it is arithmetic; the defaults are the middles of ranges in common
// practice, without a source, in a currency in which an hour of a worker costs 45. The ranges stand beside
// the keys of a case, which see.
//
// Units  mm, kg, s, h, J, kWh; money as the rates have it.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/shop/tool_making.h"
#include "sim/shop/traced.h"

namespace overbend::shop {

// A sheet that blanks are cut from, its length along the rolling direction.
struct Sheet {
    double length = 0.0, width = 0.0;  // mm, > 0
};

// Of metals that have none of their own.
constexpr double usual_strip_per_kg = 3.0;
constexpr double usual_cutting_rate = 100.0;  // mm2/s: speed of a laser times thickness

struct CostRates {
    std::string money = "units";         // what the currency is called
    int batch = 1000;                    // parts, >= 1
    std::optional<double> strip_per_kg;  // else the metal's
    double scrap_per_kg = 0.3;           // paid for what is left over
    double gap = 2.0;                    // mm between blanks, along the strip and on a sheet
    double end_scrap = 0.02;             // share of the strip that is lost at its ends and in setting up
    std::optional<Sheet> sheet = std::nullopt;  // else the strip comes as a coil of the part's width
    std::optional<double> cutting_speed;        // mm/s; else the metal's rate by the thickness
    double cutting_most = 150.0;                // mm/s, > 0, that one by the thickness at most
    double pierce = 0.5;                        // s, of every cut-out, and of a blank's outline on a sheet
    double cutting_per_hour = 80.0;
    double deburring = 3.0;  // s a part
    double lay_in = 3.0;     // s, of every stroke: picking up, loading, putting down
    double press_per_hour = 30.0;
    double worker_per_hour = 45.0;
    double cleaning = 0.02;          // a part
    double programming = 900.0;      // s a batch
    int trial_parts = 2;             // a batch, bent on setting up and thrown away, >= 0
    double first_article = 600.0;    // s a batch, measuring and recording the first good part
    double tool_steel_per_kg = 8.0;  // of steels that have no price of their own
    double milling_per_hour = 60.0;
    double erosion_per_hour = 50.0;
    double fitting_per_hour = 60.0;
    double grinding_per_hour = 60.0;
    double design_per_hour = 70.0;  // of design and of programs for the machines
    double hardening_per_kg = 6.0;
    double hardening_least = 60.0;  // of all hardened tools of a job together
    double spring = 2.0;            // each, of the wound springs under pads
    double spring_per_kg = 30.0;    // and by their mass
    MakingRates making;
    int tool_batches = 1;           // batches that share the tools, >= 1
    double regrind_strokes = 60e3;  // of a tool until it is worn, >= 0; 0: tools do not wear
    int regrinds = 8;               // of a tool until it is replaced, >= 0
    double regrind = 1.0;           // h of grinding each time
    double inspection = 10.0;       // s a part that is looked at
    double inspected = 0.05;        // share of the parts, 0 to 1
    double rejected = 0.02;         // share of the parts that are made, 0 to below 1
    double packaging = 0.02;        // a part
    double storage = 0.002;         // of a part and month
    double storage_months = 3.0;    // mean time that a part lies
    double energy_per_kWh = 0.25;
    double idle_power = 1.0;  // kW of the press while it is manned
    double efficiency = 0.3;  // of the ram's work, > 0, <= 1
    double overhead = 0.15;   // share of all other costs, >= 0: administration and sale
};

struct ToolFigures {
    std::string name;
    std::optional<double> bought;  // price of one that is bought; else it is made
    ToolStock stock;
    std::optional<double> steel_per_kg;
    bool hardened = false;
    int strokes = 0;  // of a part
};

// What the job is, from the case and its simulation.
struct JobFigures {
    double thickness = 0.0, width = 0.0, blank_length = 0.0;  // mm
    bool length_along_rolling = true;                         // on a sheet
    double density = 7850.0;                                  // kg/m3
    std::optional<double> strip_per_kg;                       // of the metal
    std::optional<double> cutting_rate;                       // mm2/s, of the metal
    double part_mass = 0.0;                                   // kg, less the cut-outs
    double cutout_perimeters = 0.0;                           // mm
    int cutouts = 0;
    int strokes = 0;
    double press_cycles = 0.0;  // s, of all strokes together, without handling
    double handling = 0.0;      // s, turning, flipping and sliding together
    double set_up = 0.0;        // s a batch: tools changed, gauge set
    double work = 0.0;          // J, of all strokes together
    std::vector<ToolFigures> tools;
};

struct CostLine {
    std::string group;  // "material"
    Traced per_part;    // cost of each part
    Traced per_batch;   // what is paid once a batch
};

struct ToolCost {
    std::string name;
    Traced cost;
};

struct CostSheet {
    std::string money;
    std::vector<CostLine> lines;  // in the order in which a part goes through the shop, then overhead
    std::vector<ToolCost> tools;
    double fixed = 0.0;     // a batch
    double variable = 0.0;  // a part
    // Of the job, not of money:
    double press_time = 0.0;           // s a part, with handling
    double strip_yield = 0.0;          // mass of the part over that of the strip it takes
    double energy_per_thousand = 0.0;  // kWh
    int blanks_a_sheet = 0;            // 0: from a coil
    double per_part(double batch) const { return variable + fixed / batch; }
    double of_batch(double batch) const { return fixed + variable * batch; }
};

// Throws OutOfRange: a sheet that no blank goes on.
CostSheet cost_sheet(const CostRates& rates, const JobFigures& job);

// How many blanks a sheet takes, their length along the rolling direction or across it.
int blanks_on(const Sheet& sheet, const JobFigures& job, double gap);

// The batch at which two ways of making a part cost the same, (fixed_b - fixed_a) / (variable_a -
// variable_b); nothing where one of them is cheaper, or as cheap, for every batch of one part or more.
struct BreakEven {
    double batch = 0.0;
    enum class Above { first, second } cheaper_above = Above::first;
};
std::optional<BreakEven> break_even(const CostSheet& a, const CostSheet& b);

// Batches for a curve: 1 to `most`, evenly on a logarithmic scale, `count` of them, whole numbers that rise.
std::vector<int> batches_up_to(int most, int count);

}  // namespace overbend::shop
