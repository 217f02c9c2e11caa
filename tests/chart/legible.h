// Whether the words of a chart, a storyboard or a page can be read: by the boxes that they really fill when
// they are painted, and by their contrast to what is behind everything.

#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "render/picture/painter.h"
#include "render/picture/palette.h"

namespace overbend::tests {

inline std::vector<picture::Text> texts_of(const picture::DrawingList& list) {
    std::vector<picture::Text> found;
    for (const picture::Item& item : list.items)
        if (const picture::Text* text = std::get_if<picture::Text>(&item)) found.push_back(*text);
    return found;
}

inline std::vector<std::string> words_on(const picture::DrawingList& list) {
    std::vector<std::string> found;
    for (const picture::Text& text : texts_of(list)) found.push_back(text.words);
    return found;
}

inline bool says(const picture::DrawingList& list, const std::string& part) {
    for (const std::string& words : words_on(list))
        if (words.find(part) != std::string::npos) return true;
    return false;
}

// Contrast of two colours, 1 to 21; Web Content Accessibility Guidelines 2.1, W3C 2018: 4.5 for words, 3 for
// lines and marks.
inline double contrast_of(const picture::Colour& a, const picture::Colour& b) {
    const double low = std::min(picture::luminance(a), picture::luminance(b));
    const double high = std::max(picture::luminance(a), picture::luminance(b));
    return (high + 0.05) / (low + 0.05);
}

// least: px. Words that are alike and at one place, as a halo's, count once.
inline void check_legible(const picture::DrawingList& list, double least_size, std::size_t least_words) {
    const std::vector<picture::Text> texts = texts_of(list);
    CHECK(texts.size() >= least_words);
    const picture::Rect picture{0.0, 0.0, static_cast<double>(list.width), static_cast<double>(list.height)};
    std::vector<picture::Rect> boxes;
    for (const picture::Text& text : texts) {
        CAPTURE(text.words);
        CHECK(text.size >= least_size - 1e-9);
        boxes.push_back(picture::painted_box(text));
        CHECK(picture::holds(picture, boxes.back()));
    }
    for (std::size_t i = 0; i < boxes.size(); ++i)
        for (std::size_t j = i + 1; j < boxes.size(); ++j) {
            if (!picture::overlap(boxes[i], boxes[j])) continue;
            CAPTURE(texts[i].words);
            CAPTURE(texts[j].words);
            CHECK_FALSE(picture::overlap(boxes[i], boxes[j]));
        }
}

}  // namespace overbend::tests
