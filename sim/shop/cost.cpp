#include "sim/shop/cost.h"

#include <algorithm>
#include <cmath>

#include "sim/errors.h"
#include "sim/shop/tool_cost.h"
#include "sim/words.h"

namespace overbend::shop {

namespace {

constexpr double hour = 3600.0;  // s
constexpr double kWh = 3.6e6;    // J

struct Strip {
    double blank_mass = 0.0;  // kg, with its cut-outs
    double used_mass = 0.0;   // kg of strip or sheet a part
    int a_sheet = 0;
};

Strip strip_of(const CostRates& rates, const JobFigures& job) {
    const double area_to_kg = job.thickness * job.density * 1e-9;
    Strip strip;
    strip.blank_mass = job.width * job.blank_length * area_to_kg;
    if (!rates.sheet) {
        strip.used_mass = job.width * (job.blank_length + rates.gap) * area_to_kg / (1.0 - rates.end_scrap);
        return strip;
    }
    strip.a_sheet = blanks_on(*rates.sheet, job, rates.gap);
    if (strip.a_sheet < 1)
        throw OutOfRange("sheet",
                         words("a blank of %.1f by %.1f mm does not fit on a sheet of %g by %g mm",
                               job.blank_length, job.width, rates.sheet->length, rates.sheet->width),
                         "give a larger sheet, or no sheet for a coil of the part's width");
    strip.used_mass =
        rates.sheet->length * rates.sheet->width * area_to_kg / strip.a_sheet / (1.0 - rates.end_scrap);
    return strip;
}

CostLine material(const CostRates& r, const JobFigures& job, const Strip& strip) {
    const double scrap = strip.used_mass - job.part_mass;
    const double price = r.strip_per_kg.value_or(job.strip_per_kg.value_or(usual_strip_per_kg));
    Traced cost{strip.used_mass * price - scrap * r.scrap_per_kg,
                r.money,
                "strip a part x its price - (strip a part - mass of the part) x price of scrap",
                {{"strip a part", strip.used_mass, "kg"},
                 {"price of the strip", price, r.money + "/kg"},
                 {"mass of the part", job.part_mass, "kg"},
                 {"price of scrap", r.scrap_per_kg, r.money + "/kg"},
                 {"blank length", job.blank_length, "mm"},
                 {"gap between blanks", r.gap, "mm"},
                 {"share lost at the ends", r.end_scrap, ""}}};
    if (strip.a_sheet > 0) cost.inputs.push_back({"blanks a sheet", 1.0 * strip.a_sheet, ""});
    return {"material", cost, nothing(r.money)};
}

// A laser melts so much of an edge a second, so that thick strip is cut slowly; on short contours its axes
// limit the speed.
double cutting_speed(const CostRates& r, const JobFigures& job) {
    if (r.cutting_speed) return *r.cutting_speed;
    return std::min(r.cutting_most, job.cutting_rate.value_or(usual_cutting_rate) / job.thickness);
}

CostLine cutting(const CostRates& r, const JobFigures& job) {
    // A blank is cut off a coil across its width, and out of a sheet all round.
    const double outline = r.sheet ? 2.0 * (job.width + job.blank_length) : job.width;
    const int pierces = job.cutouts + (r.sheet ? 1 : 0);
    const double speed = cutting_speed(r, job);
    const double seconds = (outline + job.cutout_perimeters) / speed + pierces * r.pierce;
    Traced cost{seconds / hour * r.cutting_per_hour,
                r.money,
                "((outline + cut-outs) / speed + pierces x time of one) / 3600 x price of an hour",
                {{"outline", outline, "mm"},
                 {"cut-outs", job.cutout_perimeters, "mm"},
                 {"speed", speed, "mm/s"},
                 {"pierces", 1.0 * pierces, ""},
                 {"time of one", r.pierce, "s"},
                 {"price of an hour", r.cutting_per_hour, r.money + "/h"}}};
    if (!r.cutting_speed) {
        cost.formula += "; speed = rate of the metal / thickness, at most the greatest";
        cost.inputs.push_back({"rate of the metal", job.cutting_rate.value_or(usual_cutting_rate), "mm2/s"});
        cost.inputs.push_back({"thickness", job.thickness, "mm"});
        cost.inputs.push_back({"greatest", r.cutting_most, "mm/s"});
    }
    return {"cutting", cost, nothing(r.money)};
}

// So many seconds of a worker, each part or each batch.
Traced worker_time(const CostRates& r, const char* what, double seconds) {
    return {seconds / hour * r.worker_per_hour,
            r.money,
            std::string(what) + " / 3600 x worker",
            {{what, seconds, "s"}, {"worker", r.worker_per_hour, r.money + "/h"}}};
}

Traced price_a_part(const CostRates& r, double price) {
    return {price, r.money, "price a part", {{"price a part", price, r.money}}};
}

double press_seconds(const CostRates& r, const JobFigures& job) {
    return job.press_cycles + job.strokes * r.lay_in + job.handling;
}

CostLine pressing(const CostRates& r, const JobFigures& job) {
    const double hourly = r.press_per_hour + r.worker_per_hour;
    return {"pressing",
            {press_seconds(r, job) / hour * hourly,
             r.money,
             "(cycles + strokes x loading + turning, flipping, sliding) / 3600 x (press + worker)",
             {{"cycles", job.press_cycles, "s"},
              {"strokes", 1.0 * job.strokes, ""},
              {"loading", r.lay_in, "s"},
              {"turning, flipping, sliding", job.handling, "s"},
              {"press", r.press_per_hour, r.money + "/h"},
              {"worker", r.worker_per_hour, r.money + "/h"}}},
            nothing(r.money)};
}

CostLine set_up(const CostRates& r, const JobFigures& job) {
    return {"set-up",
            nothing(r.money),
            {job.set_up / hour * (r.press_per_hour + r.worker_per_hour),
             r.money,
             "time of set-ups / 3600 x (press + worker)",
             {{"time of set-ups", job.set_up, "s"},
              {"press", r.press_per_hour, r.money + "/h"},
              {"worker", r.worker_per_hour, r.money + "/h"}}}};
}

CostLine trial_parts(const CostRates& r, const CostLine& strip, const CostLine& cut,
                     const CostLine& pressed) {
    const double one = strip.per_part.value + cut.per_part.value + pressed.per_part.value;
    return {"trial parts",
            nothing(r.money),
            {r.trial_parts * one,
             r.money,
             "parts x (material + cutting + pressing)",
             {{"parts", 1.0 * r.trial_parts, ""},
              {"material", strip.per_part.value, r.money},
              {"cutting", cut.per_part.value, r.money},
              {"pressing", pressed.per_part.value, r.money}}}};
}

CostLine inspection(const CostRates& r) {
    return {"inspection",
            {r.inspection * r.inspected / hour * r.worker_per_hour,
             r.money,
             "time of one x share of the parts / 3600 x worker",
             {{"time of one", r.inspection, "s"},
              {"share of the parts", r.inspected, ""},
              {"worker", r.worker_per_hour, r.money + "/h"}}},
            nothing(r.money)};
}

CostLine storage(const CostRates& r) {
    return {"storage",
            {r.storage * r.storage_months,
             r.money,
             "price of a part and month x months",
             {{"price of a part and month", r.storage, r.money}, {"months", r.storage_months, ""}}},
            nothing(r.money)};
}

double energy_of(const CostRates& r, const JobFigures& job) {
    return job.work / r.efficiency / kWh + r.idle_power * press_seconds(r, job) / hour;
}

CostLine energy(const CostRates& r, const JobFigures& job) {
    return {"energy",
            {energy_of(r, job) * r.energy_per_kWh,
             r.money,
             "(work / efficiency / 3.6e6 + idle power x press time / 3600) x price of a kWh",
             {{"work", job.work, "J"},
              {"efficiency", r.efficiency, ""},
              {"idle power", r.idle_power, "kW"},
              {"press time", press_seconds(r, job), "s"},
              {"price of a kWh", r.energy_per_kWh, r.money}}},
            nothing(r.money)};
}

// What is spent on a part by the time that it is inspected is lost with it.
CostLine rejects(const CostRates& r, const std::vector<CostLine>& until_inspected) {
    double made = 0.0;
    for (const CostLine& line : until_inspected) made += line.per_part.value;
    return {"rejects",
            {r.rejected / (1.0 - r.rejected) * made,
             r.money,
             "share / (1 - share) x cost of a part with its inspection",
             {{"share", r.rejected, ""}, {"cost of a part with its inspection", made, r.money}}},
            nothing(r.money)};
}

CostLine overhead(const CostRates& r, const std::vector<CostLine>& all_else) {
    double part = 0.0, batch = 0.0;
    for (const CostLine& line : all_else) part += line.per_part.value, batch += line.per_batch.value;
    const auto share_of = [&](double sum) {
        return Traced{r.overhead * sum,
                      r.money,
                      "share x sum of all other groups",
                      {{"share", r.overhead, ""}, {"sum of all other groups", sum, r.money}}};
    };
    return {"overhead", share_of(part), share_of(batch)};
}

// In the order in which a part goes through the shop.
std::vector<CostLine> lines_of(const CostRates& r, const JobFigures& job, const Strip& strip,
                               const std::vector<ToolCost>& tools) {
    const Traced none = nothing(r.money);
    const CostLine from = material(r, job, strip), cut = cutting(r, job), pressed = pressing(r, job);
    std::vector<CostLine> lines = {
        from,
        cut,
        {"deburring", worker_time(r, "time of one", r.deburring), none},
        set_up(r, job),
        {"programming", none, worker_time(r, "time of a batch", r.programming)},
        trial_parts(r, from, cut, pressed),
        {"first article", none, worker_time(r, "time of a batch", r.first_article)},
        pressed,
        energy(r, job),
        tools_line(r, tools),
        wear_line(r, job, tools),
        {"cleaning", price_a_part(r, r.cleaning), none},
        inspection(r),
    };
    lines.push_back(rejects(r, lines));
    lines.push_back({"packaging", price_a_part(r, r.packaging), none});
    lines.push_back(storage(r));
    lines.push_back(overhead(r, lines));
    return lines;
}

}  // namespace

int blanks_on(const Sheet& sheet, const JobFigures& job, double gap) {
    const double along = job.length_along_rolling ? job.blank_length : job.width;
    const double across = job.length_along_rolling ? job.width : job.blank_length;
    // n blanks need n - 1 gaps between them.
    const auto count = [&](double room, double each) {
        return static_cast<int>(std::floor((room + gap) / (each + gap) + 1e-9));
    };
    return count(sheet.length, along) * count(sheet.width, across);
}

CostSheet cost_sheet(const CostRates& rates, const JobFigures& job) {
    const Strip strip = strip_of(rates, job);
    CostSheet sheet;
    sheet.money = rates.money;
    sheet.tools = tool_costs(rates, job.tools);
    sheet.lines = lines_of(rates, job, strip, sheet.tools);
    for (const CostLine& line : sheet.lines) {
        sheet.variable += line.per_part.value;
        sheet.fixed += line.per_batch.value;
    }
    sheet.press_time = press_seconds(rates, job);
    sheet.strip_yield = job.part_mass / strip.used_mass;
    sheet.energy_per_thousand = 1000.0 * energy_of(rates, job);
    sheet.blanks_a_sheet = strip.a_sheet;
    return sheet;
}

std::optional<BreakEven> break_even(const CostSheet& a, const CostSheet& b) {
    const double dearer_parts = a.variable - b.variable;
    if (dearer_parts == 0.0) return std::nullopt;
    const double batch = (b.fixed - a.fixed) / dearer_parts;
    if (!(batch > 1.0)) return std::nullopt;
    return BreakEven{batch, dearer_parts > 0.0 ? BreakEven::Above::second : BreakEven::Above::first};
}

std::vector<int> batches_up_to(int most, int count) {
    std::vector<int> batches;
    for (int i = 0; i < count; ++i) {
        const double share = count > 1 ? 1.0 * i / (count - 1) : 1.0;
        const int batch = static_cast<int>(std::lround(std::pow(1.0 * most, share)));
        if (batches.empty() || batch > batches.back()) batches.push_back(batch);
    }
    return batches;
}

}  // namespace overbend::shop
