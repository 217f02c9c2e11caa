// Whether the words of a picture can be read: by the boxes that they really fill when they are painted, and
// by what lies below and above them.

#pragma once

#include <doctest/doctest.h>

#include <vector>

#include "render/picture/painter.h"
#include "tests/picture/words_ground.h"

namespace overbend::tests {

inline std::vector<picture::Text> words_of(const picture::DrawingList& list) {
    std::vector<picture::Text> found;
    for (const picture::Item& item : list.items)
        if (const picture::Text* text = std::get_if<picture::Text>(&item)) found.push_back(*text);
    return found;
}

// Large enough, inside the picture, apart from one another.
inline void check_words(const picture::DrawingList& list, std::size_t least_words = 11) {
    const std::vector<picture::Text> words = words_of(list);
    REQUIRE(words.size() >= least_words);
    const picture::Rect picture{0.0, 0.0, static_cast<double>(list.width), static_cast<double>(list.height)};
    std::vector<picture::Rect> boxes;
    for (const picture::Text& text : words) {
        CAPTURE(text.words);
        CHECK(text.size >= list.height / 45.0);
        boxes.push_back(painted_box(text));
        CHECK(holds(picture, boxes.back()));
    }
    for (size_t i = 0; i < boxes.size(); ++i)
        for (size_t j = i + 1; j < boxes.size(); ++j) {
            CAPTURE(words[i].words);
            CAPTURE(words[j].words);
            CHECK_FALSE(overlap(boxes[i], boxes[j]));
        }
}

// Nothing is painted over them.
inline void check_uncovered(const picture::DrawingList& list) {
    const Covers covers(list);
    for (int i = 0; i < static_cast<int>(list.items.size()); ++i) {
        const picture::Text* text = std::get_if<picture::Text>(&list.items[i]);
        if (!text) continue;
        CAPTURE(text->words);
        CHECK_FALSE(covers.over(i, painted_box(*text)));
    }
}

// Each stands out from all that is below it.
inline void check_grounds(const picture::DrawingList& list, const picture::Colour& page) {
    const Grounds grounds(list, page);
    for (int i = 0; i < static_cast<int>(list.items.size()); ++i) {
        const picture::Text* text = std::get_if<picture::Text>(&list.items[i]);
        if (!text) continue;
        CAPTURE(text->words);
        CHECK(grounds.least(i) >= least_contrast);
    }
}

}  // namespace overbend::tests
