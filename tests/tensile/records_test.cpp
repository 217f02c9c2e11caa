// Records as machines write them: separators, decimals, headings, units, true and engineering, forces.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "scenes/files/tensile/read_record.h"
#include "tests/tensile/synthetic.h"
#include "tests/tensile/written.h"

using namespace overbend;
using overbend::files::TensileRecord;
using overbend::tests::synthetic_record;
using overbend::tests::Writing;
using overbend::tests::written;

namespace {

const tensile::Record& sample() {
    static const tensile::Record record = synthetic_record({});
    return record;
}

void check_same(const TensileRecord& read, double within = 1e-6) {
    REQUIRE(read.record.size() == sample().size());
    double strain = 0.0, stress = 0.0;
    for (std::size_t i = 0; i < sample().size(); ++i) {
        strain = std::max(strain, std::abs(read.record.strain[i] - sample().strain[i]));
        stress = std::max(stress, std::abs(read.record.stress[i] - sample().stress[i]));
    }
    CHECK(strain < within);
    CHECK(stress < 1e3 * within);
}

bool says(const TensileRecord& r, const std::string& part) {
    return std::any_of(r.said.begin(), r.said.end(),
                       [&](const std::string& s) { return s.find(part) != std::string::npos; });
}

TensileRecord read(const Writing& w, const files::RecordOptions& options = {}) {
    return files::parse_record(written(sample(), w), "test.csv", options);
}

}  // namespace

TEST_CASE("records: separators and decimals are found") {
    const auto above = [&](const std::string& separator) {
        return "strain (-)" + separator + "stress (MPa)\n";
    };
    check_same(read({above(","), ","}));
    check_same(read({above(";"), ";", true}));
    check_same(read({above(";"), ";"}));
    check_same(read({above("\t"), "\t"}));
    check_same(read({above("\t"), "\t", true}));
    check_same(read({"", "   "}));
    check_same(read({above(";"), " ; ", true}));
    check_same(read({above(","), ",", false, 1.0, 1.0, ","}));   // an empty last column
    check_same(read({above(","), ",", false, 1.0, 1.0, "\r"}));  // lines of another system
    check_same(read({"\xef\xbb\xbf" + above(","), ","}));        // a byte order mark
}

TEST_CASE("records: units of headings, behind them or in a row of their own") {
    check_same(read({"Strain [%];Stress [MPa]\n", ";", false, 100.0}));
    check_same(read({"strain_%,stress_ksi\n", ",", false, 100.0, 1.0 / 6.8947573}), 1e-5);
    check_same(read({"Dehnung;Spannung\n%;N/mm2\n", ";", true, 100.0}));
    check_same(read({"\"Strain\",\"Stress\"\n\"(%)\",\"(GPa)\"\n", ",", false, 100.0, 1e-3}), 1e-5);
    check_same(read({"Elongation %\tStress MPa\n", "\t", false, 100.0}));
}

TEST_CASE("records: without headings or units they are found by their size, and said") {
    const TensileRecord plain = read({"", ","});
    check_same(plain);
    CHECK(says(plain, "There are no headings"));
    CHECK(says(plain, "has no unit; MPa is assumed"));
    const TensileRecord per_cent = read({"strain,stress\n", ",", false, 100.0});
    check_same(per_cent);
    CHECK(says(per_cent, "has no unit; % is assumed"));
}

TEST_CASE("records: force and elongation, with the specimen's sizes above the figures or by options") {
    Writing w{"# gauge length: 80 mm\n# width = 20 mm\n# thickness = 1.5 mm\nExtension (mm),Force (kN)\n",
              ",", false, 80.0, 30.0 / 1000.0};
    const TensileRecord read_above = read(w);
    check_same(read_above, 1e-5);
    CHECK(says(read_above, "Gauge length 80 mm stands in the file."));
    CHECK(read_above.specimen.thickness == 1.5);

    w.above = "Extension (in),Load (lbf)\n";
    w.per_strain = 80.0 / 25.4, w.per_stress = 30.0 / 4.4482216;
    files::RecordOptions options;
    options.specimen = {80.0, 20.0, 1.5, {}};
    check_same(read(w, options), 1e-5);
    options.specimen = {80.0, {}, {}, 30.0};
    check_same(read(w, options), 1e-5);
}

TEST_CASE("records: a German machine's export, in its own encoding") {
    const std::string above =
        "Pr\xfc"
        "fprotokoll;Zugversuch\nProbe;Coil 4711\nMessl\xe4nge L0;80;mm\nBreite b0;20,0;mm\nDicke "
        "a0;1,50;mm\n\n"
        "Verl\xe4ngerung;Kraft\nmm;N\n";
    const TensileRecord r = read({above, ";", true, 80.0, 30.0});
    check_same(r, 1e-5);
    CHECK(r.specimen.gauge_length == 80.0);
    CHECK(r.specimen.width == 20.0);
}

TEST_CASE("records: columns by option") {
    files::RecordOptions options;
    options.columns = {"strain:%", "stress:MPa"};
    check_same(read({"a,b\n", ",", false, 100.0}, options));
    options.columns = {"strain", "stress", "-"};
    check_same(read({"a,b,c\n", ",", false, 1.0, 1.0, ",7"}, options));
}

TEST_CASE("records: true stress and strain become engineering ones") {
    tensile::Record as_true = sample();
    for (std::size_t i = 0; i < as_true.size(); ++i) {
        as_true.stress[i] *= 1.0 + as_true.strain[i];
        as_true.strain[i] = std::log1p(as_true.strain[i]);
    }
    check_same(files::parse_record(written(as_true, {"True strain,True stress (MPa)\n"}), "test.csv", {}),
               1e-5);
}

TEST_CASE("records: of several columns an extensometer's counts, and time is none") {
    std::string text = "Time (s),Crosshead (mm),Strain (%),Force (kN),Stress (MPa)\n";
    for (std::size_t i = 0; i < sample().size(); ++i) {
        char line[160];
        std::snprintf(line, sizeof line, "%zu,%.8g,%.8g,%.8g,%.8g\n", i, 90.0 * sample().strain[i],
                      100.0 * sample().strain[i], 0.02 * sample().stress[i], sample().stress[i]);
        text += line;
    }
    const TensileRecord r = files::parse_record(text, "test.csv", {});
    check_same(r);
    CHECK(r.columns == "strain, column 3 (%); stress, column 5 (MPa)");
}

TEST_CASE("records: widths") {
    tests::SyntheticTest t;
    t.r_value = 1.4;
    const tensile::Record with_width = synthetic_record(t);
    std::string text = "strain,width (mm),stress (MPa)\n";
    for (std::size_t i = 0; i < with_width.size(); ++i) {
        char line[120];
        std::snprintf(line, sizeof line, "%.8g,%.8g,%.8g\n", with_width.strain[i],
                      20.0 * (1.0 + with_width.width_strain[i]), with_width.stress[i]);
        text += line;
    }
    const TensileRecord r = files::parse_record(text, "test.csv", {});
    REQUIRE(r.record.width_strain.size() == with_width.size());
    CHECK(std::abs(r.record.width_strain.back() - with_width.width_strain.back()) < 1e-4);
}

TEST_CASE("records: words at the end are left out, and said") {
    const TensileRecord r =
        files::parse_record(written(sample(), {"strain,stress\n"}) + "end of test\n", "test.csv", {});
    check_same(r);
    CHECK(says(r, "is not read: it has words"));
}
