#include "layout/areas/row_columns.h"
#include "layout/areas/text_area.h"

#include <algorithm>
#include <utility>

namespace thawslip::layout {
namespace {

using typeset::PreparedParagraph;
using typeset::StyledText;
using typeset::UnsettableCharacter;
using typeset::Weight;

/// What is strong stands out of words of any weight.
constexpr Weight strong = Weight::Bold;

bool is_second(const wording::Paragraph& paragraph) {
    return paragraph.voice == wording::Voice::Second;
}

bool is_emphatic(const wording::Span& span) {
    return span.emphasis == wording::Emphasis::Strong;
}

bool is_strong(const wording::Paragraph& paragraph) {
    return !is_second(paragraph) && !paragraph.spans.empty() &&
           is_emphatic(paragraph.spans.front());
}

/// The words of a paragraph in the weights that they are set in. In a bold area what is strong
/// stands out because the words beside it step back: look-alike names differ there too.
std::vector<StyledText> styled(const wording::Paragraph& paragraph, Weight weight) {
    const bool steps_back = weight == strong && std::ranges::any_of(paragraph.spans, is_emphatic);
    const Weight quiet = steps_back ? Weight::Medium : weight;
    std::vector<StyledText> text;
    for (const auto& span : paragraph.spans) {
        text.push_back({span.text, is_emphatic(span) && !is_second(paragraph) ? strong : quiet});
    }
    return text;
}

/// Of a label and its words one is strong: the words where they say so, else the label.
Weight label_weight(const wording::Paragraph& paragraph, const TextArea& area) {
    if (is_second(paragraph)) {
        return Weight::Regular;
    }
    if (area.labels == LabelPlace::Rail) {
        return Weight::Medium;
    }
    if (is_strong(paragraph)) {
        const bool is_bold = area.weight == Weight::Bold;
        return area.labels == LabelPlace::Above ? Weight::Regular
               : is_bold                        ? Weight::Medium
                                                : area.weight;
    }
    return strong;
}

/// Words that stand on one line with others stay together up to this many bytes, so that lines
/// break between them: "Bag 1 of 3". A phrase and its date do even where they are longer.
constexpr std::size_t kept_whole = 28;
constexpr std::size_t figure_kept_whole = 40;

std::size_t length_of(const wording::Paragraph& paragraph) {
    std::size_t bytes = paragraph.label.size();
    for (const auto& span : paragraph.spans) {
        bytes += span.text.size();
    }
    return bytes;
}

/// With no-break spaces, and word joiners after hyphens.
void keep_together(wording::Span& span) {
    std::string whole;
    for (const char c : span.text) {
        whole += c == ' ' ? "\u00a0" : c == '-' ? "-\u2060" : std::string(1, c);
    }
    span.text = whole;
}

/// A phrase too long for one line parts from nothing but its own words: neither its first word
/// stays behind on the line before, nor what it is about begins a line alone.
std::string loosely_kept(const std::string& label) {
    auto kept = label + "\u00a0";
    if (const auto first = kept.find(' '); first != std::string::npos) {
        kept.replace(first, 1, "\u00a0");
    }
    return kept;
}

/// Paragraphs of one language as one, with dots between. \pre there is one
wording::Paragraph joined(const std::vector<const wording::Paragraph*>& paragraphs) {
    wording::Paragraph line;
    line.voice = paragraphs.front()->voice;
    for (const auto* paragraph : paragraphs) {
        if (!line.spans.empty()) {
            line.spans.push_back({" · ", wording::Emphasis::Plain});
        }
        line.critical = line.critical || paragraph->critical;
        const auto begin = static_cast<std::ptrdiff_t>(line.spans.size());
        const bool is_figure = !paragraph->label.empty() && is_strong(*paragraph);
        const bool is_kept = paragraphs.size() > 1 &&
                             length_of(*paragraph) <= (is_figure ? figure_kept_whole : kept_whole);
        if (!paragraph->label.empty()) {
            const bool quiet = is_strong(*paragraph) || is_second(*paragraph);
            const bool is_loose = is_figure && !is_kept && paragraphs.size() > 1;
            line.spans.push_back(
                {is_loose ? loosely_kept(paragraph->label) : paragraph->label + " ",
                 quiet ? wording::Emphasis::Plain : wording::Emphasis::Strong});
        }
        for (const auto& span : paragraph->spans) {
            line.spans.push_back(
                {span.text, is_second(*paragraph) ? wording::Emphasis::Plain : span.emphasis});
        }
        if (is_kept) {
            std::for_each(line.spans.begin() + begin, line.spans.end(), keep_together);
        }
        line.boxes.insert(line.boxes.end(), paragraph->boxes.begin(), paragraph->boxes.end());
    }
    return line;
}

using Prepared = Result<PreparedEntry, UnsettableCharacter>;

/// The weight of a paragraph's words: headings are strong, what heads columns is less so.
Weight weight_of(const wording::Paragraph& paragraph, const TextArea& area) {
    switch (paragraph.role) {
    case wording::Role::Heading: return strong;
    case wording::Role::ColumnHeads: return Weight::Medium;
    case wording::Role::Text: break;
    }
    return is_second(paragraph) ? Weight::Regular : area.weight;
}

/// `size` where the least x-height allows it, at whatever size the area stands.
double smaller(double size, const TextArea& area) {
    return std::clamp(least_x_height / area.x_height.smallest, size, 1.0);
}

/// How large a paragraph is set, in sizes of the area's type.
double size_of(const wording::Paragraph& paragraph, const TextArea& area) {
    if (paragraph.role == wording::Role::Heading) {
        return area.heading_size;
    }
    return is_second(paragraph) ? smaller(second_size, area) : 1.0;
}

Prepared add_rest(PreparedEntry entry, const wording::Paragraph& paragraph, const TextArea& area,
                  Shaper& shaper);

Prepared prepare_entry(const wording::Paragraph& paragraph, const TextArea& area, Shaper& shaper) {
    auto spans = styled(paragraph, weight_of(paragraph, area));
    std::optional<PreparedParagraph> label;
    // What is said again needs no second line for its label.
    const bool runs_in = area.labels == LabelPlace::RunIn ||
                         (is_second(paragraph) && area.labels == LabelPlace::Above);
    if (!paragraph.label.empty() && !runs_in) {
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
        auto shaped = shaper.prepare({{std::to_string(paragraph.number) + ".", strong}});
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
    PreparedEntry entry{paragraph.marker, number, label, above, std::move(text).value()};
    entry.role = paragraph.role;
    entry.critical = paragraph.critical;
    entry.size = size_of(paragraph, area);
    return add_rest(std::move(entry), paragraph, area, shaper);
}

/// Adds the boxes of a paragraph, and what stands below it.
Prepared add_rest(PreparedEntry entry, const wording::Paragraph& paragraph, const TextArea& area,
                  Shaper& shaper) {
    for (const auto& words : paragraph.boxes) {
        auto shaped = shaper.prepare({{words, area.weight}});
        if (!shaped) {
            return Failure{shaped.fault()};
        }
        entry.boxes.push_back(std::move(shaped).value());
    }
    for (const auto& below : paragraph.below) {
        auto shaped = prepare_entry(below, area, shaper);
        if (!shaped) {
            return shaped;
        }
        entry.below.push_back(std::move(shaped).value());
        entry.below.back().label_above = false;
        entry.below.back().size = entry.size * smaller(below_size, area);
    }
    return entry;
}

/// Marks the cells of a row that say what the row above says, from the left on.
void merge(PreparedEntry& row, const wording::Paragraph& words, const wording::Paragraph* above,
           const TextArea& area) {
    if (above == nullptr || above->role != words.role) {
        return;
    }
    const auto count =
        std::min({row.cells.size(), above->cells.size(), static_cast<std::size_t>(area.merge)});
    for (std::size_t i = 0; i < count && words.cells[i] == above->cells[i]; ++i) {
        row.cells[i].repeats = true;
    }
}

/// A row of a table, or a paragraph.
Prepared prepare_any(const wording::Paragraph& paragraph, const TextArea& area, Shaper& shaper) {
    if (paragraph.cells.empty()) {
        return prepare_entry(paragraph, area, shaper);
    }
    if (area.table.empty()) {
        return prepare_entry(without_columns(paragraph), area, shaper);
    }
    wording::Paragraph row;
    row.role = paragraph.role;
    row.below = paragraph.below;
    auto entry = prepare_entry(row, area, shaper);
    if (!entry) {
        return entry;
    }
    auto prepared = std::move(entry).value();
    for (auto& cell : cells_for(paragraph, area)) {
        cell.role = paragraph.role;
        auto shaped = prepare_entry(cell, area, shaper);
        if (!shaped) {
            return shaped;
        }
        prepared.cells.push_back(std::move(shaped).value());
        prepared.cells.back().label_above = false; // a row has no line to spare for it
    }
    return prepared;
}

/// A heading, and how it is said again above what runs on beside it.
Prepared prepare_heading(const wording::Paragraph& paragraph, const std::string& continued,
                         const TextArea& area, Shaper& shaper) {
    auto entry = prepare_entry(paragraph, area, shaper);
    if (!entry || paragraph.is_again || continued.empty() || area.strips <= Length{}) {
        return entry;
    }
    auto again = prepare_entry(said_again(paragraph, continued), area, shaper);
    if (!again) {
        return again;
    }
    auto heading = std::move(entry).value();
    heading.again = {std::move(again).value()};
    return heading;
}

/// What the second language adds to a paragraph. Where labels hang in a column, words that both say
/// alike stand once.
wording::Paragraph added_to(const wording::Paragraph& first, wording::Paragraph second,
                            const TextArea& area) {
    const bool hangs = area.labels == LabelPlace::Column || area.labels == LabelPlace::Rail;
    if (hangs && second.spans == first.spans && !second.label.empty()) {
        second.spans.clear();
    }
    if (second.below == first.below) {
        second.below.clear();
    }
    return second;
}

/// The entries of an area, shaped one after the other. What the second language says belongs to the
/// one before, which must still stand when the next is added.
class Entries {
public:
    Entries(const TextArea& area, const std::string& continued, Shaper& shaper)
        : area_{area}, continued_{continued}, shaper_{shaper} {}

    std::optional<UnsettableCharacter> add(const wording::Paragraph& paragraph) {
        const bool adds = is_second(paragraph) && last_ != nullptr && last_->cells.empty();
        auto entry = adds ? prepare_any(added_to(*last_, paragraph, area_), area_, shaper_)
                     : paragraph.role == wording::Role::Heading
                         ? prepare_heading(paragraph, continued_, area_, shaper_)
                         : prepare_any(paragraph, area_, shaper_);
        if (!entry) {
            return entry.fault();
        }
        if (adds) {
            all_.back().second = {std::move(entry).value()};
            return std::nullopt;
        }
        all_.push_back(std::move(entry).value());
        merge(all_.back(), paragraph, last_, area_);
        last_ = &paragraph;
        return std::nullopt;
    }

    std::vector<PreparedEntry> take() { return std::move(all_); }

private:
    const TextArea& area_;
    const std::string& continued_;
    Shaper& shaper_;
    std::vector<PreparedEntry> all_;
    const wording::Paragraph* last_ = nullptr; ///< of the first language
};

using MaybeFault = std::optional<ContentFault>;

MaybeFault add_paragraphs(Entries& entries, const TextArea& area, const wording::Print& print,
                          std::size_t form) {
    for (const auto& name : area.words) {
        const auto* field = print.field(name);
        if (field == nullptr) {
            continue;
        }
        for (const auto& paragraph : field->said(form)) {
            if (const auto fault = entries.add(paragraph)) {
                return ContentFault{name, field->where, *fault};
            }
        }
    }
    return std::nullopt;
}

/// The fault of a line in the first of its fields that cannot be set.
ContentFault fault_in_line(const UnsettableCharacter& fault, const TextArea& area,
                           const wording::Print& print, std::size_t form, Shaper& shaper) {
    for (const auto& name : area.words) {
        const auto* field = print.field(name);
        if (field != nullptr &&
            std::ranges::any_of(field->said(form), [&](const wording::Paragraph& paragraph) {
                return !prepare_any(paragraph, area, shaper);
            })) {
            return {name, field->where, fault};
        }
    }
    return {area.words.front(), print.where, fault};
}

/// All fields on one line; what the second language says on one of its own, for no line mixes two.
MaybeFault add_line(Entries& entries, const TextArea& area, const wording::Print& print,
                    std::size_t form, Shaper& shaper) {
    std::vector<const wording::Paragraph*> first;
    std::vector<const wording::Paragraph*> second;
    for (const auto& name : area.words) {
        const auto* field = print.field(name);
        if (field == nullptr) {
            continue;
        }
        for (const auto& paragraph : field->said(form)) {
            (is_second(paragraph) ? second : first).push_back(&paragraph);
        }
    }
    std::vector<wording::Paragraph> lines;
    for (const auto* line : {&first, &second}) {
        if (!line->empty()) {
            lines.push_back(joined(*line));
        }
    }
    for (const auto& line : lines) {
        if (const auto fault = entries.add(line)) {
            return fault_in_line(*fault, area, print, form, shaper);
        }
    }
    return std::nullopt;
}

/// What stands in the area when its fields say what they say in `form`.
Result<Content, ContentFault> prepare_form(const TextArea& area, const wording::Print& print,
                                           std::size_t form, Shaper& shaper) {
    Entries entries{area, print.continued_phrase, shaper};
    auto fault = area.join == Join::Line ? add_line(entries, area, print, form, shaper)
                                         : add_paragraphs(entries, area, print, form);
    if (fault) {
        return Failure{std::move(*fault)};
    }
    return Content{entries.take()};
}

/// In how many shorter forms the area's fields can be said: none where it never says less.
std::size_t shorter_forms(const TextArea& area, const wording::Print& print) {
    std::size_t forms = 0;
    for (const auto& name : area.words) {
        const auto* field = area.shorten.empty() ? nullptr : print.field(name);
        forms = std::max(forms, field == nullptr ? 0 : field->shorter.size());
    }
    return forms;
}

} // namespace

Result<Content, ContentFault> prepare(const TextArea& area, const wording::Print& print,
                                      Shaper& shaper) {
    auto full = prepare_form(area, print, 0, shaper);
    if (!full) {
        return full;
    }
    auto content = std::move(full).value();
    for (std::size_t form = 1; form <= shorter_forms(area, print); ++form) {
        auto shorter = prepare_form(area, print, form, shaper);
        if (!shorter) {
            return shorter;
        }
        content.add_shorter(std::move(shorter).value());
    }
    return content;
}

} // namespace thawslip::layout
