// Records that are mended with a word, or refused with one.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "sim/tensile/coil.h"
#include "tests/tensile/synthetic.h"

using namespace overbend;
using namespace overbend::tensile;
using overbend::tests::synthetic_record;
using overbend::tests::SyntheticTest;

namespace {

bool says(const std::vector<std::string>& sentences, const std::string& part) {
    return std::any_of(sentences.begin(), sentences.end(),
                       [&](const std::string& s) { return s.find(part) != std::string::npos; });
}

Record good() {
    SyntheticTest t;
    t.scatter = 0.3;
    return synthetic_record(t);
}

std::string refusal(const Record& r) {
    try {
        read_coil({prepare(r)}, Nominal{208e3, "dc01", ""});
    } catch (const BadRecord& bad) {
        return bad.what();
    }
    return "";
}

// An unloading loop at a point: down along the elastic line to a fifth, and up again.
Record with_loop(const Record& r, std::size_t at) {
    Record looped = only(r, [&] {
        std::vector<std::size_t> kept;
        for (std::size_t i = 0; i <= at; ++i) kept.push_back(i);
        return kept;
    }());
    for (const bool down : {true, false})
        for (int i = 1; i <= 20; ++i) {
            const double part = down ? 1.0 - 0.04 * i : 0.2 + 0.04 * i;
            looped.stress.push_back(part * r.stress[at]);
            looped.strain.push_back(r.strain[at] - (1.0 - part) * r.stress[at] / 208e3);
            looped.line.push_back(r.line[at]);
        }
    for (std::size_t i = at + 1; i < r.size(); ++i)
        looped.strain.push_back(r.strain[i]), looped.stress.push_back(r.stress[i]),
            looped.line.push_back(r.line[i]);
    return looped;
}

}  // namespace

TEST_CASE("mend: a good record is left as it is") {
    const Mended m = mend(good());
    CHECK(m.said.empty());
    CHECK(m.fractured);
    CHECK(m.record.size() > good().size() - 10);
}

TEST_CASE("mend: unloading loops are left out, and said; the figures stay") {
    const Record plain = good(), looped = with_loop(with_loop(plain, 200), 320);
    const Mended m = mend(looped);
    CHECK(says(m.said, "unloaded 2 times beyond yield"));
    const Coil a = read_coil({prepare(plain)}, Nominal{208e3, "dc01", ""}),
               b = read_coil({prepare(looped)}, Nominal{208e3, "dc01", ""});
    CHECK(std::abs(a.strength.value - b.strength.value) < 1.0);
    CHECK(std::abs(a.proof.value - b.proof.value) < 1.0);
    CHECK(std::abs(a.fits[0].numbers[0].value / b.fits[0].numbers[0].value - 1.0) < 0.01);
}

TEST_CASE("mend: points out of place are left out, with their lines") {
    Record r = good();
    r.strain[150] += 0.05, r.stress[220] *= 2.0, r.stress[300] = 0.0;
    const Mended m = mend(r);
    CHECK(says(m.said, "3 points out of place left out (line " + std::to_string(r.line[150]) + ", "));
    CHECK(refusal(r).empty());
    // The fracture is none, though the load falls at once.
    CHECK(mend(good()).said.empty());
}

TEST_CASE("mend: a dense record is gathered, and its figures stay") {
    SyntheticTest t;
    t.scatter = 1.0;
    t.elastic_points = 20000, t.plastic_points = 150000;
    const Coil dense = read_coil({prepare(synthetic_record(t))}, Nominal{208e3, "dc01", ""});
    CHECK(says(dense.tests[0].from.mended.said, " are gathered to "));
    CHECK(dense.tests[0].from.mended.record.size() < 10000);
    CHECK_FALSE(dense.upper_yield);
    CHECK(dense.modulus_measured);
    CHECK(std::abs(dense.strength.value / tests::uniform_of(t).strength - 1.0) < 1e-3);
    CHECK(std::abs(dense.proof.value / tests::proof_of(t) - 1.0) < 3e-3);
}

TEST_CASE("mend: what comes after the fracture is left out") {
    Record r = good();
    const std::size_t points = r.size();
    for (int i = 0; i < 30; ++i) {
        r.strain.push_back(r.strain.back() + 1e-3), r.stress.push_back(0.4);
        r.line.push_back(r.line.back() + 1);
    }
    const Mended m = mend(r);
    CHECK(m.fractured);
    CHECK(m.record.size() <= points);
}

TEST_CASE("mend: a load below 0 throughout is a pull") {
    Record r = good();
    for (double& s : r.stress) s = -s;
    CHECK(says(mend(r).said, "read as a pull"));
}

TEST_CASE("mend: an extensometer that is taken off past the greatest load ends the record") {
    Record r = good();
    for (std::size_t i = greatest_stress(r) + 30; i < r.size(); ++i)
        r.strain[i] = r.strain[greatest_stress(r) + 29];
    CHECK(says(mend(r).said, "past the greatest load"));
}

TEST_CASE("refused: with what is wrong and what would be right") {
    const Record r = good();
    Record few;
    for (std::size_t i = 0; i < 12; ++i)
        few.strain.push_back(1e-3 * double(i)), few.stress.push_back(30.0 * double(i)),
            few.line.push_back(int(i) + 2);
    CHECK(refusal(few) ==
          "the record has 12 points; give a record of 20 points at least, a hundred or more of a good one");

    Record clipped = r;
    for (double& s : clipped.stress) s = std::min(s, 300.0);
    CHECK(refusal(clipped).find("it is clipped; give a record whose load cell was not at its limit") !=
          std::string::npos);

    Record slipped = r;
    for (std::size_t i = 200; i < slipped.size(); ++i) slipped.strain[i] -= 0.02;
    CHECK(refusal(slipped).find("the strain runs back from") != std::string::npos);
    CHECK(refusal(slipped).find("the extensometer slipped") != std::string::npos);

    Record stands = r;
    for (std::size_t i = 120; i < stands.size(); ++i) stands.strain[i] = stands.strain[119];
    CHECK(refusal(stands).find("the strain stands at") != std::string::npos);

    Record late = only(r, [&] {
        std::vector<std::size_t> kept;
        for (std::size_t i = 0; i < r.size(); ++i)
            if (r.strain[i] > 0.003) kept.push_back(i);
        return kept;
    }());
    CHECK(refusal(late).find("it has no elastic part") != std::string::npos);

    Record elastic = only(r, [&] {
        std::vector<std::size_t> kept;
        for (std::size_t i = 0; i < r.size() && r.strain[i] < 0.0024; ++i) kept.push_back(i);
        return kept;
    }());
    CHECK(refusal(elastic).find("before 0.2 per cent") != std::string::npos);

    Record unloaded = r;
    for (double& s : unloaded.stress) s *= 1e-4;
    CHECK(refusal(unloaded).find("there is no load in the record") != std::string::npos);

    Record unstrained = r;
    for (double& e : unstrained.strain) e *= 1e-3;
    CHECK(refusal(unstrained).find("was not strained") != std::string::npos);

    Record in_psi = r;
    for (double& s : in_psi.stress) s *= 145.0;
    CHECK(refusal(in_psi).find("more than any strip bears") != std::string::npos);

    Record in_per_cent = r;
    for (double& e : in_per_cent.strain) e *= 100.0;
    CHECK(refusal(in_per_cent).find("which no strip reaches") != std::string::npos);
}
