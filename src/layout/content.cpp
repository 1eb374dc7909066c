#include "layout/content.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

using typeset::PreparedParagraph;
using typeset::StyledText;
using typeset::UnsettableCharacter;
using typeset::Weight;

/// Where the baseline stands in a line's leading: room above for an accented capital, below for
/// a descender. Common practice, no source.
constexpr double baseline_share = 0.77;

/// Extra space between paragraphs, in leadings.
constexpr double paragraph_space = 0.18;

constexpr double marker_width = 1.55; // em, a tick box or a short number with the space after it
constexpr double number_gap = 0.5;    // em between a long number and what follows
constexpr double label_gap = 0.8;     // em between the label column and the text
constexpr double widest_label = 0.42; // of the area's width

/// Where an area's text begins, in em, after markers and labels.
struct Indents {
    double label = 0.0;
    double text = 0.0;
};

/// \pre !content.empty()
Indents indents(const Content& content, double width) {
    double marker = 0.0;
    double label = 0.0;
    for (const auto& entry : content.entries()) {
        if (entry.marker != wording::Marker::None) {
            const double number = entry.number ? entry.number->natural_width() + number_gap : 0.0;
            marker = std::max({marker, marker_width, number});
        }
        if (entry.label && !entry.label_above) {
            label = std::max(label, entry.label->natural_width() + label_gap);
        }
    }
    return {marker, marker + std::min(label, width * widest_label)};
}

struct EntryLines {
    int label = 0;
    int text = 0;
    int count() const { return std::max({label, text, 1}); }
};

EntryLines count_lines(const PreparedEntry& entry, const Indents& at, double width) {
    EntryLines lines;
    lines.text = entry.text.count_lines(std::max(width - at.text, 0.1));
    if (entry.label && !entry.label_above) {
        lines.label = entry.label->count_lines(std::max(at.text - at.label - label_gap, 0.1));
    }
    return lines;
}

/// What a label above adds to an entry's height, in leadings of the words below it.
double above_lines(const PreparedEntry& entry, double width) {
    return entry.label_above ? above_size * entry.label->count_lines(width / above_size) : 0.0;
}

Weight strong(Weight weight) {
    return weight == Weight::Regular ? Weight::Bold : weight;
}

std::vector<StyledText> styled(const std::vector<wording::Span>& spans, Weight weight) {
    std::vector<StyledText> text;
    for (const auto& span : spans) {
        text.push_back(
            {span.text, span.emphasis == wording::Emphasis::Strong ? strong(weight) : weight});
    }
    return text;
}

bool is_strong(const wording::Paragraph& paragraph) {
    return !paragraph.spans.empty() &&
           paragraph.spans.front().emphasis == wording::Emphasis::Strong;
}

/// Of a label and its words one is strong: the words where they say so, else the label.
Weight label_weight(const wording::Paragraph& paragraph, const Area& area) {
    if (is_strong(paragraph)) {
        return area.labels == LabelPlace::Above ? Weight::Regular : area.weight;
    }
    return strong(area.weight);
}

/// All paragraphs of the area's fields as one, with dots between.
wording::Paragraph joined(const std::vector<const wording::Paragraph*>& paragraphs) {
    wording::Paragraph line;
    for (const auto* paragraph : paragraphs) {
        if (!line.spans.empty()) {
            line.spans.push_back({" · ", wording::Emphasis::Plain});
        }
        if (!paragraph->label.empty()) {
            line.spans.push_back({paragraph->label + " ", is_strong(*paragraph)
                                                              ? wording::Emphasis::Plain
                                                              : wording::Emphasis::Strong});
        }
        line.spans.insert(line.spans.end(), paragraph->spans.begin(), paragraph->spans.end());
    }
    return line;
}

Result<PreparedEntry, UnsettableCharacter> prepare_entry(const wording::Paragraph& paragraph,
                                                         const Area& area, Shaper& shaper) {
    auto spans = styled(paragraph.spans, area.weight);
    std::optional<PreparedParagraph> label;
    if (!paragraph.label.empty() && area.labels != LabelPlace::RunIn) {
        auto shaped = shaper.prepare({{paragraph.label, label_weight(paragraph, area)}});
        if (!shaped) {
            return Failure{shaped.fault()};
        }
        label = std::move(shaped).value();
    } else if (!paragraph.label.empty()) {
        spans.insert(spans.begin(), {paragraph.label + " ", label_weight(paragraph, area)});
    }
    std::optional<PreparedParagraph> number;
    if (paragraph.marker == wording::Marker::Number) {
        auto shaped =
            shaper.prepare({{std::to_string(paragraph.number) + ".", strong(area.weight)}});
        if (!shaped) {
            return Failure{shaped.fault()};
        }
        number = std::move(shaped).value();
    }
    auto text = shaper.prepare(spans);
    if (!text) {
        return Failure{text.fault()};
    }
    const bool above = label && area.labels == LabelPlace::Above;
    return PreparedEntry{paragraph.marker, number, label, above, std::move(text).value()};
}

double slack(Align align, double room, double used) {
    switch (align) {
    case Align::Left: return 0.0;
    case Align::Centre: return std::max(room - used, 0.0) / 2;
    case Align::Right: return std::max(room - used, 0.0);
    }
    return 0.0;
}

/// Sets the lines of a content one below the other.
class Setter {
public:
    Setter(const Area& area, TypeSize type, Rect room) : area_{area}, type_{type}, room_{room} {}

    void entry(const PreparedEntry& entry, const Indents& at, double width) {
        const auto lines = count_lines(entry, at, width);
        if (entry.label_above) {
            label_above(*entry.label, width);
        }
        marker(entry);
        if (entry.label && !entry.label_above) {
            paragraph(*entry.label, at.label, at.text - at.label - label_gap);
        }
        paragraph(entry.text, at.text, width - at.text);
        y_ += type_.leading * (lines.count() + paragraph_space);
    }

    std::vector<Item> take() { return std::move(items_); }

private:
    Length baseline(int line) const {
        return room_.top() + y_ + type_.leading * (line + baseline_share);
    }

    /// Sets the label small and moves down past it.
    void label_above(const PreparedParagraph& label, double width) {
        const auto words = type_;
        type_ = {words.size * above_size, words.leading * above_size};
        paragraph(label, 0.0, width / above_size);
        y_ += type_.leading * label.count_lines(width / above_size);
        type_ = words;
    }

    void marker(const PreparedEntry& entry) {
        if (entry.marker == wording::Marker::TickBox) {
            const Length side = type_.size * 0.72;
            items_.push_back(
                Outline{{{room_.left() + line_width / 2, baseline(0) - side}, {side, side}},
                        line_width,
                        Length{}});
        }
        if (entry.number) {
            paragraph(*entry.number, 0.0, entry.number->natural_width() + number_gap);
        }
    }

    void paragraph(const PreparedParagraph& text, double left, double width) {
        int n = 0;
        for (const auto& line : text.set(std::max(width, 0.1))) {
            const double start = left + slack(area_.align, width, line.width);
            for (const auto& piece : line.pieces) {
                items_.push_back(
                    Text{piece.run,
                         type_.size,
                         {room_.left() + type_.size * (start + piece.x), baseline(n)}});
            }
            ++n;
        }
    }

    // Lines thinner than this fail on worn printers: two dots at 203 dpi.
    static constexpr Length line_width = Length::points(0.75);
    const Area& area_;
    TypeSize type_;
    Rect room_;
    Length y_;
    std::vector<Item> items_;
};

} // namespace

Result<PreparedParagraph, UnsettableCharacter>
Shaper::prepare(const std::vector<StyledText>& spans) {
    Key key;
    for (const auto& span : spans) {
        key.emplace_back(span.text, span.weight);
    }
    const auto known = prepared_.find(key);
    if (known != prepared_.end()) {
        return known->second;
    }
    auto shaped = typeset::prepare(spans, *fonts_);
    if (shaped) {
        prepared_.emplace(std::move(key), shaped.value());
    }
    return shaped;
}

void Content::share_with(const Content& other) {
    if (!empty() && !other.empty() && *entries_ == *other.entries_) {
        entries_ = other.entries_;
    }
}

Result<Content, ContentFault> prepare_content(const Area& area, const wording::Print& print,
                                              Shaper& shaper) {
    if (area.kind != AreaKind::Text) {
        Content content;
        content.code = area.kind == AreaKind::Code && print.has_code;
        return content;
    }
    std::vector<PreparedEntry> entries;
    const auto add = [&](const wording::Paragraph& paragraph) {
        auto entry = prepare_entry(paragraph, area, shaper);
        if (entry) {
            entries.push_back(std::move(entry).value());
            return std::optional<UnsettableCharacter>{};
        }
        return std::optional{entry.fault()};
    };
    std::vector<const wording::Paragraph*> line;
    for (const auto& name : area.words) {
        const auto* field = print.field(name);
        if (field == nullptr) {
            continue;
        }
        for (const auto& paragraph : field->paragraphs) {
            if (area.join == Join::Line) {
                line.push_back(&paragraph);
            } else if (const auto fault = add(paragraph)) {
                return Failure{ContentFault{name, field->where, *fault}};
            }
        }
    }
    if (!line.empty()) {
        if (const auto fault = add(joined(line))) {
            return Failure{ContentFault{area.words.front(), print.where, *fault}};
        }
    }
    return Content{std::move(entries)};
}

Extent measure(const Content& content, const Area&, TypeSize type, Length width) {
    Extent extent;
    if (content.empty()) {
        return extent;
    }
    const double ems = width / type.size;
    const auto at = indents(content, ems);
    double above = 0.0;
    for (const auto& entry : content.entries()) {
        extent.lines += count_lines(entry, at, ems).count();
        above += above_lines(entry, ems);
        extent.cuts_words |= entry.text.widest_word() > ems - at.text + 1e-9;
        if (entry.label_above) {
            extent.cuts_words |= entry.label->widest_word() > ems / above_size + 1e-9;
        } else if (entry.label) {
            extent.cuts_words |= entry.label->widest_word() > at.text - at.label - label_gap + 1e-9;
        }
    }
    const auto gaps = static_cast<double>(content.entries().size() - 1);
    extent.height = type.leading * (extent.lines + above + gaps * paragraph_space);
    const double first = content.entries().front().label_above ? above_size : 1.0;
    extent.first_baseline = type.leading * (first * baseline_share);
    return extent;
}

Length natural_width(const Content& content, const Area&, TypeSize type) {
    if (content.empty()) {
        return {};
    }
    double widest = 0.0;
    const auto at = indents(content, 1e6);
    for (const auto& entry : content.entries()) {
        widest = std::max(widest, at.text + entry.text.natural_width());
        if (entry.label_above) {
            widest = std::max(widest, entry.label->natural_width() * above_size);
        }
    }
    return type.size * widest;
}

std::vector<Item> set(const Content& content, const Area& area, TypeSize type, Rect room) {
    if (content.empty()) {
        return {};
    }
    const double ems = room.size.width / type.size;
    const auto at = indents(content, ems);
    Setter setter{area, type, room};
    for (const auto& entry : content.entries()) {
        setter.entry(entry, at, ems);
    }
    return setter.take();
}

} // namespace thawslip::layout
