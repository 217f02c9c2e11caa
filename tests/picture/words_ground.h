// What words stand on, and what is painted over them.

#pragma once

#include <vector>

#include "render/picture/painter.h"

namespace overbend::tests {

// Contrast of two colours, 1 to 21: (L1 + 0.05) / (L2 + 0.05) with the relative luminances, L1 the larger.
// Source  Web Content Accessibility Guidelines 2.1, W3C 2018, "contrast ratio" and 1.4.3: at least 4.5 for
// words.
double contrast(const picture::Colour& a, const picture::Colour& b);
constexpr double least_contrast = 4.5;

// The least contrast of a text with any pixel below it, of a list in which it is item `index`; its halo,
// where it has one, lies between. A picture without background is laid on `page`.
class Grounds {
  public:
    Grounds(const picture::DrawingList& list, const picture::Colour& page);
    double least(int index) const;

  private:
    const picture::DrawingList& list_;
    picture::Pixels pixels_;  // without the words
};

// What is painted over words: the shapes that come after them, fills and lines.
class Covers {
  public:
    explicit Covers(const picture::DrawingList& list);  // which has to live as long
    bool over(int index, const picture::Rect& box) const;

  private:
    struct Cover {
        int index = 0;
        const picture::Shape* shape = nullptr;
        picture::Rect box;
    };
    std::vector<Cover> covers_;
};

}  // namespace overbend::tests
