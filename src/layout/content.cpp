#include "layout/content.h"

#include "layout/table.h"

namespace thawslip::layout {
namespace {

using typeset::PreparedParagraph;
using typeset::StyledText;
using typeset::UnsettableCharacter;
using typeset::Weight;

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

using Prepared = Result<PreparedEntry, UnsettableCharacter>;

/// The weight of a paragraph's words: headings are strong, what heads columns is quiet.
Weight weight_of(const wording::Paragraph& paragraph, const Area& area) {
    switch (paragraph.role) {
    case wording::Role::Heading: return strong(area.weight);
    case wording::Role::ColumnHeads: return Weight::Regular;
    case wording::Role::Text: break;
    }
    return area.weight;
}

Prepared prepare_entry(const wording::Paragraph& paragraph, const Area& area, Shaper& shaper) {
    auto spans = styled(paragraph.spans, weight_of(paragraph, area));
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
    return PreparedEntry{paragraph.marker,        number,        label, above,
                         std::move(text).value(), paragraph.role};
}

/// A row of a table, or a paragraph.
Prepared prepare_any(const wording::Paragraph& paragraph, const Area& area, Shaper& shaper) {
    if (paragraph.cells.empty()) {
        return prepare_entry(paragraph, area, shaper);
    }
    if (area.table.empty()) {
        return prepare_entry(without_columns(paragraph), area, shaper);
    }
    wording::Paragraph row;
    row.role = paragraph.role;
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

Result<Content, ContentFault> prepare_content(const Area& area, const wording::Print& print,
                                              Shaper& shaper) {
    Content content;
    if (area.kind != AreaKind::Text) {
        content.code = area.kind == AreaKind::Code && !print.code_texts.empty();
        return content;
    }
    const auto add = [&](const wording::Paragraph& paragraph) {
        auto entry = prepare_any(paragraph, area, shaper);
        if (entry) {
            content.entries.push_back(std::move(entry).value());
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
    return content;
}

} // namespace thawslip::layout
