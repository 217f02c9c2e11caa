#include "sim/tensile/mend.h"

#include <algorithm>
#include <cmath>

#include "sim/counted.h"
#include "sim/words.h"

namespace overbend::tensile {

namespace {

constexpr double yielded =
    0.004;  // strain behind the first load, past which strain that is behind is no scatter

// Where the load first is a hundredth of the greatest: before that the slack of the machine is taken up.
std::size_t first_load(const Record& r) {
    const double least = 0.01 * r.stress[greatest_stress(r)];
    std::size_t i = 0;
    while (r.stress[i] < least) ++i;
    return i;
}

void require_test(const Record& r) {
    if (r.size() < fewest_points)
        throw BadRecord(r.size() == 0 ? 0 : r.line.back(), "the record has " + counted(r.size(), "point"),
                        words("give a record of %d points at least, a hundred or more of a good one",
                              static_cast<int>(fewest_points)));
    const double most = r.stress[greatest_stress(r)];
    if (!(most > 1.0))
        throw BadRecord(0, words("the greatest stress is %.3g MPa: there is no load in the record", most),
                        "give a record in the stated units; see --columns");
    const auto [low, high] = std::minmax_element(r.strain.begin(), r.strain.end());
    if (!(*high - *low > 1e-3))
        throw BadRecord(
            0, words("the strain goes from %.3g to %.3g only: the specimen was not strained", *low, *high),
            "give the record up to the greatest load at least, and the unit of the strain; see --columns");
    if (most > 1e4)
        throw BadRecord(r.line[greatest_stress(r)],
                        words("the greatest stress is %.4g MPa, more than any strip bears", most),
                        "give the unit of the stress or force; see --columns");
    if (*high > 3.0)
        throw BadRecord(0, words("the strain goes to %.4g, which no strip reaches", *high),
                        "give the unit of the strain, such as %; see --columns");
}

void refuse_clipped(const Record& r) {
    const std::size_t top = greatest_stress(r);
    const double most = r.stress[top];
    std::size_t last = top;
    std::size_t same = 0;
    for (std::size_t i = top; i < r.size(); ++i)
        if (r.stress[i] == most) last = i, ++same;
    const double over = r.strain[last] - r.strain[top];
    if (same < 8 || 20 * same < r.size() - top + 20 || over < 2e-3 || top < 4) return;
    // A true maximum is flat before it is reached.
    const std::size_t before = top - std::min<std::size_t>(top, 4);
    const double run = r.strain[top] - r.strain[before];
    const double slope = run > 0.0 ? (most - r.stress[before]) / run : 0.0;
    if (slope * over < 0.02 * most) return;
    throw BadRecord(r.line[top],
                    words("the load stands at exactly %.6g MPa over %s (strain %.4g to %.4g): it is clipped",
                          most, counted(same, "point").c_str(), r.strain[top], r.strain[last]),
                    "give a record whose load cell was not at its limit");
}

// The point from which on the specimen is broken; the size when it is not.
std::size_t fracture_of(const Record& r) {
    const std::size_t top = greatest_stress(r);
    std::vector<double> still_to_come(r.size() + 1, -1e300);  // greatest stress from here on
    for (std::size_t i = r.size(); i-- > 0;) still_to_come[i] = std::max(still_to_come[i + 1], r.stress[i]);
    for (std::size_t i = top + 1; i < r.size(); ++i) {
        const bool falls = r.stress[i] < r.stress[i - 1] - 0.25 * r.stress[top];
        // An unloading loop comes back to where it left.
        if ((falls || r.stress[i] < 0.33 * r.stress[top]) && still_to_come[i] <= 0.9 * r.stress[i - 1])
            return i;
    }
    return r.size();
}

// The extensometer: its strain stands while the load changes, or runs back while the load stands.
struct Trouble {
    std::size_t from = 0;
    std::string wrong;
};

bool find_standing(const Record& r, std::size_t start, Trouble& t) {
    const double most = r.stress[greatest_stress(r)];
    for (std::size_t i = start; i < r.size(); ++i) {
        std::size_t j = i;
        while (j + 1 < r.size() && r.strain[j + 1] == r.strain[i]) ++j;
        const auto [low, high] = std::minmax_element(r.stress.begin() + i, r.stress.begin() + j + 1);
        if (j >= i + 8 && *high - *low > 0.05 * most) {
            t.from = i + 1;
            t.wrong = words("the strain stands at %.4g over %s while the load goes from %.4g to %.4g MPa",
                            r.strain[i], counted(j - i + 1, "point").c_str(), r.stress[i], r.stress[j]);
            return true;
        }
        i = j;
    }
    return false;
}

bool find_slip(const Record& r, std::size_t start, double first_strain, Trouble& t) {
    double far = r.strain[start], at_far = r.stress[start];
    for (std::size_t i = start + 1; i < r.size(); ++i) {
        if (r.strain[i] >= far) {
            far = r.strain[i], at_far = r.stress[i];
            continue;
        }
        const double back = far - r.strain[i];
        if (far - first_strain > yielded && back > std::max(0.002, 0.03 * (far - first_strain)) &&
            r.stress[i] > 0.93 * at_far) {
            t.from = i;
            t.wrong = words("the strain runs back from %.4g to %.4g while the load stands at %.4g MPa", far,
                            r.strain[i], r.stress[i]);
            return true;
        }
    }
    return false;
}

// Single points far from both neighbours, which are near one another; a record with many is left as it is.
void leave_out_spikes(Mended& m) {
    const Record& r = m.record;
    const double most = r.stress[greatest_stress(r)], scatter = scatter_of(r.stress);
    std::vector<std::size_t> kept;
    std::string lines;
    const auto is_spike = [](double before, double at, double after, double least) {
        const double jump = std::min(std::abs(at - before), std::abs(at - after));
        return (at - before) * (at - after) > 0.0 && jump > least && std::abs(after - before) < 0.3 * jump;
    };
    for (std::size_t i = 0; i < r.size(); ++i) {
        const bool inner = i > 0 && i + 1 < r.size();
        const bool spike = inner && (is_spike(r.strain[i - 1], r.strain[i], r.strain[i + 1], 0.005) ||
                                     is_spike(r.stress[i - 1], r.stress[i], r.stress[i + 1],
                                              std::max(0.15 * most, 10.0 * scatter)));
        if (spike)
            lines += (lines.empty() ? "" : ", ") + std::to_string(r.line[i]);
        else
            kept.push_back(i);
    }
    const std::size_t spikes = r.size() - kept.size();
    if (spikes == 0 || 50 * spikes > r.size() + 100) return;
    m.said.push_back(counted(spikes, "point") + " out of place left out (line " + lines + ").");
    m.record = only(r, kept);
}

// A dense record as means of neighbours, closely where the metal yields: among very many points some scatter
// far, and would pass for a yield point or the greatest load.
void gather(Mended& m, std::size_t start) {
    const Record& r = m.record;
    if (r.size() <= dense) return;
    const double first = r.strain[start];
    const auto [low, high] = std::minmax_element(r.strain.begin(), r.strain.end());
    const double early = 0.01 / 2000.0, late = (*high - *low) / 3000.0;
    Record means;
    for (std::size_t i = 0; i < r.size();) {
        const double begin = r.strain[i], step = begin - first < 0.01 ? std::min(early, late) : late;
        double strain = 0.0, stress = 0.0, width = 0.0, n = 0.0;
        means.line.push_back(r.line[i]);
        do {
            strain += r.strain[i], stress += r.stress[i], n += 1.0;
            if (!r.width_strain.empty()) width += r.width_strain[i];
            ++i;
        } while (i < r.size() && std::abs(r.strain[i] - begin) < step);
        means.strain.push_back(strain / n), means.stress.push_back(stress / n);
        if (!r.width_strain.empty()) means.width_strain.push_back(width / n);
    }
    m.said.push_back(counted(r.size(), "point") + " are gathered to " + counted(means.size(), "mean") + ".");
    m.record = std::move(means);
}

Record cut_at(const Record& r, std::size_t end) {
    std::vector<std::size_t> kept(end);
    for (std::size_t i = 0; i < end; ++i) kept[i] = i;
    return only(r, kept);
}

void cut_trouble(Mended& m, const Trouble& t) {
    if (t.from <= greatest_stress(m.record))
        throw BadRecord(m.record.line[std::min(t.from, m.record.size() - 1)],
                        t.wrong + ": the extensometer slipped or was taken off",
                        "give a record whose extensometer holds up to the greatest load");
    m.said.push_back("Line " + std::to_string(m.record.line[t.from]) + ": " + t.wrong +
                     ", past the greatest load; the record is read up to there.");
    m.record = cut_at(m.record, t.from);
}

void leave_out_loops(Mended& m, std::size_t start) {
    const Record& r = m.record;
    const double first = r.strain[start], most = r.stress[greatest_stress(r)];
    double far = -1e300;
    int loops = 0;
    bool in_loop = false;
    std::vector<std::size_t> kept;
    for (std::size_t i = 0; i < r.size(); ++i) {
        const bool behind = far - first > yielded && r.strain[i] < far;
        if (behind && !in_loop && !kept.empty() && r.stress[i] < r.stress[kept.back()] - 0.1 * most)
            ++loops, in_loop = true;
        if (behind) continue;
        in_loop = false;
        far = std::max(far, r.strain[i]);
        kept.push_back(i);
    }
    const std::size_t left_out = r.size() - kept.size();
    if (left_out == 0) return;
    if (loops > 0)
        m.said.push_back("It was unloaded " + counted(loops, "time") + " beyond yield; " +
                         counted(left_out, "point") + " of these loops and of scatter are left out.");
    else if (20 * left_out > r.size())
        m.said.push_back(counted(left_out, "point") + " at which the strain is behind are left out.");
    m.record = only(r, kept);
}

}  // namespace

Mended mend(const Record& raw) {
    Mended m;
    m.record = raw;
    const auto below = std::count_if(raw.stress.begin(), raw.stress.end(), [](double s) { return s < 0.0; });
    if (4 * static_cast<std::size_t>(below) > 3 * raw.size()) {
        for (double& s : m.record.stress) s = -s;
        const double sum = m.record.strain.empty() ? 0.0 : m.record.strain.back() - m.record.strain.front();
        if (sum < 0.0)
            for (double& e : m.record.strain) e = -e;
        m.said.push_back("The load is below 0 throughout; it is read as a pull.");
    }
    require_test(m.record);
    leave_out_spikes(m);
    refuse_clipped(m.record);
    gather(m, first_load(m.record));
    if (const std::size_t end = fracture_of(m.record); end < m.record.size()) {
        m.record = cut_at(m.record, end);
        m.fractured = true;
    } else {
        const double most = m.record.stress[greatest_stress(m.record)];
        m.fractured = m.record.stress.back() < 0.9 * most;
    }
    const std::size_t start = first_load(m.record);
    Trouble t;
    if (find_standing(m.record, start, t)) cut_trouble(m, t);
    if (find_slip(m.record, start, m.record.strain[start], t)) cut_trouble(m, t);
    leave_out_loops(m, start);
    require_test(m.record);
    return m;
}

}  // namespace overbend::tensile
