// A job as it is shown: what film, storyboard, sheets, page, charts and window need of it, filled once.
// Words of each are made where they are drawn.
//
// Plain data. It points into the job's recordings, which must outlive it.
// Units  mm, rad, N per mm of strip width, kN on the strip's whole width; press coordinates.

#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "render/picture/stage.h"
#include "sim/clearance/access.h"
#include "sim/finding.h"

namespace overbend::picture {

// How the strip is turned from one stroke to the next: another end to the left, rolled over about its length,
// or tipped over end for end, which is both.
enum class Turning { none, end_for_end, over, both };

// A stretch of recorded states in which the strip hits what stands in the press.
struct ShownHit {
    InterferenceMark deepest;
    int first_state = 0, last_state = 0;
    // Where and how deep it is in each of these states, if that is known; else as deepest all the time.
    std::vector<std::pair<Place, double>> in_states = {};
    std::string words = {};  // the whole of it, in a sentence

    bool is_there(double instant) const { return instant >= first_state && instant <= last_state; }
};

struct ShownTool {
    std::string role;          // "punch"
    std::string name;          // "two-way block"
    std::string set;           // how it stands in the press, behind its name: ", face 2 up"; may be empty
    std::string figures = {};  // "V die, groove of 84 degrees ..."; may be empty
};

// What press or tools bear of a stroke.
struct ForceLimit {
    std::string words;   // "Rated force of the press"
    double force = 0.0;  // kN, > 0
};

struct ShownStroke {
    std::string name;
    const stroke::Recording* recording = nullptr;  // with states
    std::vector<BendMark> bends;                   // angles that are left out are measured
    std::vector<ShownHit> hits = {};
    std::vector<clearance::Closest> clearance = {};  // one a recorded state; empty: not shown
    int number = 0;  // among the job's strokes, from 1; 0: its place among those shown
    clearance::Way way_in = clearance::Way::in_the_plane, way_off = clearance::Way::in_the_plane;

    Turning turning = Turning::none;  // from the stroke before, as the case has it
    bool upper_face_up = true;        // of the blank
    bool left_end_left = true;
    std::vector<ShownTool> tools = {};  // punch and die, then pad and clamp if there are any
    std::optional<double> gauge = {};   // its face, mm from the punch's axis; none: there is no gauge
    double stop_travel = 0.0;           // mm from first touch
    double stop_force = 0.0, peak_force = 0.0;
    std::string goal = {};  // what the stop is to bring, a sentence
    std::vector<ForceLimit> limits = {};
    std::vector<std::string> findings = {};  // warnings and problems of the stroke, as sentences
    std::vector<std::string> remarks = {};   // sentences
};

// The part as it is drawn: its mid-line with places for words on it.
struct ShownPart {
    std::vector<Point> line;         // mm, y up, two points at least
    std::vector<double> flats;       // mm, lengths, from the left; one more than bends
    std::vector<Point> flat_middle;  // where on the line
    std::vector<Point> bend_middle;
};

// Something found out about the whole job.
struct ShownFinding {
    Severity severity = Severity::note;
    std::string heading;  // of a list of this severity: "Problems"
    std::string words;    // a sentence
};

struct ShownJob {
    std::string title;
    std::string material;         // in words; may be empty
    double thickness = 0.0;       // mm, > 0
    double strip_width = 0.0;     // mm, > 0
    double blank_length = 0.0;    // mm, > 0
    std::string blank;            // length, rolling direction, mass: a sentence
    std::vector<BendLine> bends;  // all of the part, from the blank's left end
    ShownPart part;
    double press_force = 0.0;                     // kN, rated; 0: no press is named
    std::vector<ShownStroke> strokes;             // those that are shown, in their order
    int stroke_count = 0;                         // of the whole job; 0: those that are shown
    const stroke::Recording* finished = nullptr;  // of the job's last stroke; null: the part is not finished
    std::string verdict;                          // a sentence; empty: none is shown
    bool feasible = true;                         // what the verdict says
    std::vector<ShownFinding> findings;           // on the whole job, the gravest first
};

// The number of a shown stroke among the job's, and how many these are.
int number_of(const ShownJob& job, int index);
int stroke_count(const ShownJob& job);

// What stops the job, as sentences; empty: it can be made.
std::vector<std::string> problems(const ShownJob& job);

// "Stainless steel, 1 mm", and with the strip's width.
std::string material_words(const ShownJob& job);
std::string strip_words(const ShownJob& job);

// Throws OutOfRange: no strokes, or one without a whole recording; `what` shows it, for the message.
void check_strokes(const ShownJob& job, const std::string& what);

// The end of the colours' scale, the same for all strokes.
double colour_limit(const ShownJob& job, Colouring colouring);

// What the stroke hits at an instant: where and as deep as then; or, without words, where it is deepest.
std::vector<InterferenceMark> hits_at(const ShownStroke& stroke, double instant);
std::vector<InterferenceMark> deepest_hits_at(const ShownStroke& stroke, double instant);

// None where it is not known, or all of the strip lies in the forming zone.
std::optional<double> clearance_at(const ShownStroke& stroke, double instant);

}  // namespace overbend::picture
