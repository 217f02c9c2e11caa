// Whether the words of a picture can be read: by the boxes that they really fill when they are painted.

#pragma once

#include <doctest/doctest.h>

#include <vector>

#include "render/picture/painter.h"

namespace overbend::tests {

inline std::vector<render::Text> words_of(const render::DrawingList& list) {
    std::vector<render::Text> found;
    for (const render::Item& item : list.items)
        if (const render::Text* text = std::get_if<render::Text>(&item)) found.push_back(*text);
    return found;
}

// Large enough, inside the picture, apart from one another.
inline void check_words(const render::DrawingList& list, std::size_t least_words = 11) {
    const std::vector<render::Text> words = words_of(list);
    REQUIRE(words.size() >= least_words);
    const render::Rect picture{0.0, 0.0, static_cast<double>(list.width), static_cast<double>(list.height)};
    std::vector<render::Rect> boxes;
    for (const render::Text& text : words) {
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

}  // namespace overbend::tests
