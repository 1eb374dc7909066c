#include "wording/fields.h"

#include "kitchen/cautions.h"
#include "wording/phrases.h"
#include "wording/typography.h"

namespace thawslip::wording {
namespace {

Field field(std::string name, KeyPath where) {
    return {std::move(name), {}, std::move(where)};
}

Field one_paragraph(std::string name, Paragraph paragraph, KeyPath where) {
    return {std::move(name), {std::move(paragraph)}, std::move(where)};
}

/// What the thaw line tells anyway is not told twice on one print.
bool thaw_line_says(const kitchen::Caution& caution) {
    return caution.id == "thaw-cook-at-once" || caution.id == "cold-water-thaw";
}

/// "Made **17 Oct 2026**": the label is quiet, the date is what counts.
Paragraph dated(std::string_view label, std::string_view date) {
    Paragraph paragraph;
    paragraph.label = label;
    paragraph.spans.push_back({std::string{date}, Emphasis::Strong});
    return paragraph;
}

} // namespace

Field dish_field(const kitchen::PlannedPackage& planned) {
    Paragraph paragraph;
    paragraph.spans.push_back({typeset_text(planned.package.dish), Emphasis::Plain});
    return one_paragraph("dish", std::move(paragraph), planned.package.where.key("dish"));
}

Field servings_field(const kitchen::PlannedPackage& planned, const Language& language) {
    return one_paragraph(
        "servings", plain(language.say("label.serves", {std::to_string(planned.package.servings)})),
        planned.package.where.key("servings"));
}

Field bag_field(const kitchen::Bag& bag, const Language& language) {
    return one_paragraph(
        "bag",
        plain(language.say("label.bag", {std::to_string(bag.number), std::to_string(bag.of)})), {});
}

Field id_field(const kitchen::Bag& bag) {
    Paragraph paragraph;
    paragraph.spans.push_back({unbroken(bag.id), Emphasis::Plain});
    return one_paragraph("id", std::move(paragraph), {});
}

Field made_field(const kitchen::PlannedPackage& planned, const Language& language) {
    return one_paragraph("made",
                         dated(language.say("label.made"), say_date(planned.made, language)),
                         planned.package.where.key("made"));
}

Field keep_until_field(const kitchen::PlannedPackage& planned, const Language& language) {
    const auto& keep = planned.keep_until;
    return one_paragraph("use-by",
                         dated(say_keep_until_head(keep, language), say_date(keep.date, language)),
                         planned.package.where.key("use_by"));
}

Field thaw_field(const kitchen::PlannedPackage& planned, const Language& language) {
    return one_paragraph("thaw",
                         labelled(say_thaw_label(planned.package.thaw.method, language),
                                  say_thaw(planned, language)),
                         planned.package.thaw.where);
}

Field contains_field(const kitchen::PlannedPackage& planned, const Language& language) {
    auto result = field("contains", planned.package.where.key("contains"));
    std::string list;
    for (const auto& allergen : planned.package.contains) {
        list += (list.empty() ? "" : ", ") + allergen;
    }
    if (!list.empty()) {
        result.paragraphs.push_back(labelled(language.say("label.contains"), list));
    }
    return result;
}

Field note_field(const kitchen::PlannedPackage& planned, const Language& language) {
    auto result = field("note", planned.package.where.key("note"));
    if (!planned.package.note.empty()) {
        result.paragraphs.push_back(labelled(language.say("label.notes"), planned.package.note));
    }
    return result;
}

Field kitchen_field(const std::string& kitchen, const Language& language) {
    auto result = field("kitchen", KeyPath{"day.kitchen"});
    if (!kitchen.empty()) {
        result.paragraphs.push_back(plain(language.say("label.from-kitchen", {kitchen})));
    }
    return result;
}

Field local_rules_field(const Language& language) {
    return one_paragraph("local-rules", plain(language.say("standing.local-rules")), {});
}

Field cautions_field(const kitchen::PlannedPackage& planned, kitchen::CautionLevel least,
                     const Language& language) {
    auto result = field("cautions", planned.package.where);
    for (const auto& caution : planned.cautions) {
        if (caution.level >= least && !thaw_line_says(caution)) {
            result.paragraphs.push_back(plain(say_caution(caution, language)));
        }
    }
    return result;
}

std::string say_caution(const kitchen::Caution& caution, const Language& language) {
    const auto key = "caution." + caution.id;
    return language.has(key) ? fill(language.say(key), caution.values) : kitchen::english(caution);
}

std::string say_addition(const kitchen::Finish& finish) {
    auto text = finish.add.as_written;
    if (!finish.bag.empty()) {
        text += " (" + finish.bag + ")";
    }
    return text;
}

} // namespace thawslip::wording
