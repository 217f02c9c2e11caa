#include "scenes/documents/results/measures_json.h"

#include <nlohmann/json.hpp>

#include "sim/units.h"

namespace overbend::documents {

using Json = nlohmann::ordered_json;

namespace {

Json spread_json(const job::AngleSpread& s) {
    Json json = {{"whole_deg", s.whole() / degree},
                 {"strength_deg", s.strength / degree},
                 {"thickness_deg", s.thickness / degree},
                 {"friction_deg", s.friction / degree}};
    if (s.mechanics) json["mechanics_deg"] = *s.mechanics / degree;
    return json;
}

}  // namespace

Json measures_json(const files::Case& c, const job::JobResult& job) {
    constexpr const char* kinds[] = {"angle", "leg", "inside radius", "profile"};  // as SizeKind has them
    Json list = Json::array();
    for (const job::MeasuredSize& m : job.measures) {
        const bool angle = m.what == job::SizeKind::angle, profile = m.what == job::SizeKind::profile;
        const double unit = angle ? degree : 1.0;
        Json size = {{"kind", kinds[static_cast<int>(m.what)]}, {"size", job::size_name(c, m)}};
        if (!profile) size["drawing"] = m.drawn / unit, size["finished"] = m.made / unit;
        size["off"] = m.off() / unit;
        size["allowed"] = m.reference ? Json("reference") : Json(m.allowed / unit);
        size["unit"] = angle ? "deg" : "mm";
        size["within"] = m.within();
        if (angle && !job.spread.empty()) size["may_be_off"] = spread_json(job.spread[m.index]);
        list.push_back(size);
    }
    return list;
}

}  // namespace overbend::documents
