#include "typeset/paragraph.h"

#include "typeset/paragraph_data.h"
#include "typeset/word_cut.h"

#include <algorithm>
#include <cassert>
#include <map>

namespace thawslip::typeset {
namespace {

using Data = PreparedParagraph::Data;

/// The boxes for one measure. A word wider than the measure is a box for its tail only, which
/// begins a line of its own, since behind others there was no room for the whole word: were the cut
/// word to begin there, a narrower measure could give fewer lines than a wider one that lets the
/// word stand whole.
struct FittedBoxes {
    LineBoxes boxes;
    std::map<std::size_t, CutWord> cuts; ///< by word
};

FittedBoxes cut_to(const Data& data, double measure, Cuts cuts) {
    FittedBoxes fitted{data.boxes, {}};
    for (std::size_t i = 0; i < data.words.size(); ++i) {
        if (fits(data.boxes.width(i, i), measure)) {
            continue;
        }
        auto cut = cut_word(data.shaped, data.written, data.words[i], measure, cuts);
        const auto edge = data.shaped.left_edge(cut.tail);
        fitted.boxes.boxes[i].start = data.shaped.place_of(edge.safe) - edge.width;
        std::erase_if(fitted.boxes.exact, [i](const ExactWidth& e) { return e.first == i; });
        for (auto last = i; last < data.words.size(); ++last) {
            const auto right = data.shaped.right_edge(data.words[last].end, Ending::Plain);
            if (right.safe >= edge.safe) {
                break;
            }
            const auto width = data.shaped.width(cut.tail, data.words[last].end, Ending::Plain);
            fitted.boxes.exact.push_back({i, last, width});
        }
        fitted.cuts.emplace(i, std::move(cut));
    }
    std::sort(fitted.boxes.exact.begin(), fitted.boxes.exact.end(),
              [](const ExactWidth& a, const ExactWidth& b) {
                  return a.first != b.first ? a.first < b.first : a.last < b.last;
              });
    return fitted;
}

/// How many lines a paragraph takes whose words fill so many.
int with_cuts(int lines, const FittedBoxes& fitted) {
    for (const auto& [word, cut] : fitted.cuts) {
        lines += static_cast<int>(cut.lines.size());
    }
    return lines;
}

/// Boxes and the lines that they fill.
struct Filled {
    FittedBoxes boxes;
    std::vector<LineRange> lines;
};

Filled fill(const Data& data, double measure, Cuts cuts) {
    auto fitted = cut_to(data, measure, cuts);
    auto lines = total_fit(fitted.boxes, measure);
    return {std::move(fitted), std::move(lines)};
}

/// Words cut where a reader stumbles least, as long as that takes no line more: how many lines
/// there are is counted with the farthest cuts, which a narrower measure never makes fewer.
Filled fill(const Data& data, double measure) {
    auto filled = fill(data, measure, Cuts::Farthest);
    if (filled.boxes.cuts.empty()) {
        return filled;
    }
    auto kind = fill(data, measure, Cuts::Kindest);
    const auto count = [](const Filled& f) {
        return with_cuts(static_cast<int>(f.lines.size()), f.boxes);
    };
    return count(kind) <= count(filled) ? kind : filled;
}

/// Adds `shaped` to the line's last run, or begins another when the face changes.
void append(Line& line, const ShapedGlyph& shaped) {
    if (line.pieces.empty() || line.pieces.back().run.face != shaped.face) {
        line.pieces.push_back({line.width, {shaped.face, {}, {}}});
    }
    auto& run = line.pieces.back().run;
    run.glyphs.push_back(shaped.glyph);
    line.width += shaped.glyph.advance;
}

/// Gives each run its part of `text`, which ends with the line, and counts its glyphs' text from
/// there. A hyphen drawn after the text stands for one byte more.
void give_text(Line& line, std::string_view text) {
    for (auto& piece : line.pieces) {
        auto& run = piece.run;
        const auto begin = run.glyphs.front().text_begin;
        const auto end = run.glyphs.back().text_end;
        run.text = text.substr(begin, end - begin);
        if (end > text.size()) {
            run.text += '-';
        }
        for (auto& glyph : run.glyphs) {
            glyph.text_begin -= begin;
            glyph.text_end -= begin;
        }
    }
}

Line line_of(const Data& data, CutLine range) {
    Line line;
    for (const auto& shaped : data.shaped.glyphs(range.begin, range.end, range.ending)) {
        append(line, shaped);
    }
    give_text(line, std::string_view{data.shaped.text()}.substr(0, range.end));
    return line;
}

/// Where the text of a line ends: a dot between two things says nothing at the end of a line.
std::size_t end_of(const Data& data, std::size_t last) {
    constexpr std::string_view dot = " ·";
    const auto& word = data.words[last];
    const auto text =
        std::string_view{data.shaped.text()}.substr(word.begin, word.end - word.begin);
    const bool hangs = last + 1 < data.words.size() && text.ends_with(dot);
    return word.end - (hangs ? dot.size() : 0);
}

} // namespace

double PreparedParagraph::natural_width() const {
    return data_->boxes.boxes.empty() ? 0.0 : data_->boxes.width(0, data_->boxes.boxes.size() - 1);
}

double PreparedParagraph::widest_word() const {
    return data_->widest_word;
}

bool PreparedParagraph::empty() const {
    return data_->words.empty();
}

std::vector<Line> PreparedParagraph::set(double width) const {
    assert(width > 0.0 && "a measure is wider than nothing");
    const auto [fitted, ranges] = fill(*data_, width);
    std::vector<Line> lines;
    for (const auto& range : ranges) {
        auto begin = data_->words[range.first].begin;
        if (const auto cut = fitted.cuts.find(range.first); cut != fitted.cuts.end()) {
            for (const auto& piece : cut->second.lines) {
                lines.push_back(line_of(*data_, piece));
                lines.back().breaks_word = true;
            }
            begin = cut->second.tail;
        }
        const auto end = end_of(*data_, range.last);
        lines.push_back(line_of(*data_, {begin, end, Ending::Plain}));
    }
    return lines;
}

int PreparedParagraph::count_lines(double width) const {
    assert(width > 0.0 && "a measure is wider than nothing");
    if (fits(data_->widest_word, width)) {
        return typeset::count_lines(data_->boxes, width);
    }
    const auto fitted = cut_to(*data_, width, Cuts::Farthest);
    return with_cuts(typeset::count_lines(fitted.boxes, width), fitted);
}

} // namespace thawslip::typeset
