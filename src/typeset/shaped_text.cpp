#include "typeset/shaped_text.h"

#include <algorithm>

namespace thawslip::typeset {
namespace {

double width_of(const std::vector<ShapedGlyph>& glyphs, std::size_t first, std::size_t end) {
    double width = 0.0;
    for (auto i = first; i < end; ++i) {
        width += glyphs[i].glyph.advance;
    }
    return width;
}

/// The place of the first glyph whose text begins at `offset` or later.
std::size_t first_at(const std::vector<ShapedGlyph>& glyphs, std::size_t offset) {
    const auto found =
        std::partition_point(glyphs.begin(), glyphs.end(), [offset](const ShapedGlyph& shaped) {
            return shaped.cluster < offset;
        });
    return static_cast<std::size_t>(found - glyphs.begin());
}

} // namespace

ShapedText::ShapedText(std::string text, std::vector<Item> items, std::vector<Face> faces)
    : text_{std::move(text)}, items_{std::move(items)}, faces_{std::move(faces)} {
    glyphs_ = shape_again(0, text_.size(), Ending::Plain);
    places_.push_back(0.0);
    for (const auto& shaped : glyphs_) {
        places_.push_back(places_.back() + shaped.glyph.advance);
    }
}

std::vector<ShapedGlyph> ShapedText::shape_again(std::size_t begin, std::size_t end,
                                                 Ending ending) const {
    std::vector<ShapedGlyph> glyphs;
    auto item = std::partition_point(items_.begin(), items_.end(), [begin](const Item& candidate) {
        return candidate.end <= begin;
    });
    for (; item != items_.end() && item->begin < end; ++item) {
        const Stretch stretch{text_, std::max(begin, item->begin), std::min(end, item->end),
                              item->script, item->end >= end ? ending : Ending::Plain};
        shape(stretch, faces_[item->face], item->face, glyphs);
    }
    return glyphs;
}

std::size_t ShapedText::index_at(std::size_t offset) const {
    return first_at(glyphs_, offset);
}

bool ShapedText::is_safe(std::size_t offset) const {
    const auto index = index_at(offset);
    return index == glyphs_.size() ? offset == text_.size()
                                   : glyphs_[index].cluster == offset && glyphs_[index].is_safe;
}

double ShapedText::place_of(std::size_t offset) const {
    return places_[index_at(offset)];
}

std::size_t ShapedText::safe_after(std::size_t offset) const {
    auto index = index_at(offset);
    while (index < glyphs_.size() &&
           (glyphs_[index].cluster <= offset || !glyphs_[index].is_safe)) {
        ++index;
    }
    return index == glyphs_.size() ? text_.size() : glyphs_[index].cluster;
}

std::size_t ShapedText::safe_before(std::size_t offset) const {
    auto index = index_at(offset);
    while (index > 0 && !glyphs_[--index].is_safe) {
    }
    return glyphs_.empty() ? 0 : glyphs_[index].cluster;
}

// Letters shaped again may reach farther than they did: where "ff" was one glyph, a lone "f" may
// kern with the "y" after it. So an edge moves on until the new glyphs are safe there as well.

ShapedText::Edge ShapedText::left_edge(std::size_t begin) const {
    if (is_safe(begin)) {
        return {begin, 0.0};
    }
    for (auto safe = safe_after(begin);; safe = safe_after(safe)) {
        const auto again = shape_again(begin, safe_after(safe), Ending::Plain);
        const auto split = first_at(again, safe);
        if (split == again.size() || again[split].is_safe) {
            return {safe, width_of(again, 0, split)};
        }
    }
}

ShapedText::Edge ShapedText::right_edge(std::size_t end, Ending ending) const {
    if (ending == Ending::Plain && is_safe(end)) {
        return {end, 0.0};
    }
    for (auto safe = safe_before(end);; safe = safe_before(safe)) {
        const auto again = shape_again(safe_before(safe), end, ending);
        const auto split = first_at(again, safe);
        if (again[split].is_safe) { // the first of all is
            return {safe, width_of(again, split, again.size())};
        }
    }
}

double ShapedText::width(std::size_t begin, std::size_t end, Ending ending) const {
    if (begin >= end) {
        return 0.0;
    }
    const auto left = left_edge(begin);
    const auto right = right_edge(end, ending);
    if (left.safe > right.safe) {
        const auto again = shape_again(begin, end, ending);
        return width_of(again, 0, again.size());
    }
    return left.width + place_of(right.safe) - place_of(left.safe) + right.width;
}

std::vector<ShapedGlyph> ShapedText::glyphs(std::size_t begin, std::size_t end,
                                            Ending ending) const {
    if (begin >= end) {
        return {};
    }
    const auto left = left_edge(begin);
    const auto right = right_edge(end, ending);
    if (left.safe > right.safe) {
        return shape_again(begin, end, ending);
    }
    // What lies beyond a safe place does not bear on the glyphs before it, nor the reverse.
    auto line = shape_again(begin, left.safe, Ending::Plain);
    const auto at = [this](std::size_t offset) {
        return glyphs_.begin() + static_cast<std::ptrdiff_t>(index_at(offset));
    };
    line.insert(line.end(), at(left.safe), at(right.safe));
    if (right.safe < end) {
        const auto tail = shape_again(right.safe, end, ending);
        line.insert(line.end(), tail.begin(), tail.end());
    }
    return line;
}

} // namespace thawslip::typeset
