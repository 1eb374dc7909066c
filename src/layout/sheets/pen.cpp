#include "layout/sheets/pen.h"

#include <string>

namespace thawslip::layout {
namespace {

/// Baseline to baseline, in em: common practice, no source.
constexpr double leading = 1.3;

} // namespace

std::optional<typeset::PreparedParagraph> Pen::prepared(std::string_view text, const Hand& hand) {
    auto paragraph = typeset::prepare({{std::string{text}, hand.weight}}, fonts_);
    if (!paragraph) {
        if (!fault_) {
            fault_ = paragraph.fault();
        }
        return std::nullopt;
    }
    return std::move(paragraph).value();
}

void Pen::place(const typeset::Line& line, Point baseline, Length size) {
    for (const auto& piece : line.pieces) {
        frame_.items.push_back(Text{piece.run, size, {baseline.x + piece.x * size, baseline.y}});
    }
}

void Pen::write(std::string_view text, Point baseline, const Hand& hand) {
    const auto paragraph = prepared(text, hand);
    if (!paragraph || paragraph->empty()) {
        return;
    }
    // A measure with an em to spare, so that rounding never breaks the line.
    for (const auto& line : paragraph->set(paragraph->natural_width() + 1)) {
        const Length left = line.width * hand.size * share_before(hand.align);
        place(line, {baseline.x - left, baseline.y}, hand.size);
    }
}

Length Pen::write_paragraph(std::string_view text, Point top_left, Length width, const Hand& hand) {
    const auto paragraph = prepared(text, hand);
    if (!paragraph || paragraph->empty()) {
        return top_left.y;
    }
    const Length step = hand.size * leading;
    Length baseline = top_left.y + hand.size * fonts_.metrics(hand.weight).ascent;
    Length below = top_left.y;
    for (const auto& line : paragraph->set(width / hand.size)) {
        place(line, {top_left.x, baseline}, hand.size);
        baseline += step;
        below += step;
    }
    return below;
}

Length Pen::width_of(std::string_view text, const Hand& hand) {
    const auto paragraph = prepared(text, hand);
    return paragraph ? hand.size * paragraph->natural_width() : Length{};
}

Length Pen::height_of(std::string_view text, Length width, const Hand& hand) {
    const auto paragraph = prepared(text, hand);
    return paragraph ? hand.size * leading * paragraph->count_lines(width / hand.size) : Length{};
}

void Pen::draw_across(Length from, Length to, Length y, Length thickness) {
    frame_.items.push_back(Rule{{{from, y - thickness / 2}, {to - from, thickness}}});
}

void Pen::draw_down(Length from, Length to, Length x, Length thickness) {
    frame_.items.push_back(Rule{{{x - thickness / 2, from}, {thickness, to - from}}});
}

} // namespace thawslip::layout
