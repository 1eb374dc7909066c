#include "wording/fields.h"

#include "base/letters.h"
#include "kitchen/allergens/added_allergens.h"
#include "kitchen/allergens/allergens.h"
#include "kitchen/figures.h"
#include "wording/look_alikes.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/typography.h"

#include <algorithm>

namespace thawslip::wording {
namespace {

Field field(std::string name, KeyPath where) {
    return {std::move(name), {}, std::move(where)};
}

Field one_paragraph(std::string name, Paragraph paragraph, KeyPath where) {
    return {std::move(name), {std::move(paragraph)}, std::move(where)};
}

/// "Made **17 Oct 2026**", "Serves **6**": the label is quiet, the figure is what counts.
Paragraph figure(std::string_view label, std::string_view words) {
    auto paragraph = as_is(with_no_break_spaces(words), Emphasis::Strong);
    paragraph.label = label;
    return paragraph;
}

/// The same with these words strong where they stand first, a number whole.
Paragraph with_strong(Paragraph paragraph, const std::string& words) {
    const auto wanted = typeset_text(words);
    const auto [text, emphasis] = paragraph.spans.front();
    auto at = text.find(wanted);
    while (at != std::string::npos && at > 0 && is_digit(text[at - 1])) {
        at = text.find(wanted, at + 1);
    }
    if (at == std::string::npos) {
        return paragraph;
    }
    std::vector<Span> parts;
    for (const auto& part : {Span{text.substr(0, at), emphasis}, Span{wanted, Emphasis::Strong},
                             Span{text.substr(at + wanted.size()), emphasis}}) {
        if (!part.text.empty()) {
            parts.push_back(part);
        }
    }
    paragraph.spans.erase(paragraph.spans.begin());
    paragraph.spans.insert(paragraph.spans.begin(), parts.begin(), parts.end());
    return paragraph;
}

std::string_view if_thawed_key(kitchen::ThawMethod method) {
    switch (method) {
    case kitchen::ThawMethod::Refrigerator: return "thaw.if-refrigerator";
    case kitchen::ThawMethod::ColdWater: return "thaw.if-cold-water";
    case kitchen::ThawMethod::Microwave: return "thaw.if-microwave";
    case kitchen::ThawMethod::FromFrozen: break;
    }
    return "thaw.if-frozen";
}

std::string in_either(const std::string& one, const std::string& other, const Language& language) {
    return one.empty() ? other : other.empty() ? one : language.say("thaw.if-or", {one, other});
}

/// "thawed in cold water or in the microwave".
std::string say_thawed_by(const std::vector<kitchen::ThawMethod>& methods,
                          const Language& language) {
    std::string ways;
    std::string frozen;
    for (const auto method : methods) {
        auto& text = method == kitchen::ThawMethod::FromFrozen ? frozen : ways;
        text = in_either(text, language.say(if_thawed_key(method)), language);
    }
    const auto thawed = ways.empty() ? ways : language.say("thaw.if-thawed", {ways});
    return in_either(thawed, frozen, language);
}

/// The same with its time strong: both ends where they stand as a range, else the later one.
Paragraph with_strong_time(Paragraph paragraph, const kitchen::TimeRange& time,
                           const Language& language) {
    const auto range = say_time_range(time, language);
    const auto& text = paragraph.spans.front().text;
    const bool is_range = text.find(typeset_text(range)) != std::string::npos;
    return with_strong(std::move(paragraph), is_range ? range : say_lead(time.high, language));
}

/// Several paragraphs as one: each label strong before its words, sentences between them.
Paragraph in_one(const std::vector<Paragraph>& paragraphs) {
    auto one = paragraphs.front();
    for (std::size_t i = 1; i < paragraphs.size(); ++i) {
        add_sentence(one, paragraphs[i].label, paragraphs[i].spans);
    }
    return one;
}

} // namespace

Field dish_field(const kitchen::PlannedPackage& planned) {
    return one_paragraph(field_name::dish, plain(planned.package.dish),
                         planned.package.where.key("dish"));
}

Field dish_field(const kitchen::PlannedPackage& planned, const kitchen::Plan& plan) {
    std::vector<std::string> others;
    for (const auto& other : plan.packages) {
        if (other.number != planned.number) {
            others.push_back(typeset_text(other.package.dish));
        }
    }
    auto result = dish_field(planned);
    result.paragraphs.front().spans = told_apart(typeset_text(planned.package.dish), others);
    return result;
}

Field mark_field(const kitchen::PlannedPackage& planned) {
    auto paragraph = as_is(std::to_string(planned.number), Emphasis::Strong);
    paragraph.number = planned.number;
    return one_paragraph(field_name::mark, std::move(paragraph), planned.package.where);
}

Field month_strip_field(const kitchen::PlannedPackage& planned, const Style& style) {
    auto result = field(field_name::month_strip, planned.package.where.key("use_by"));
    const auto& limit = planned.keep_until.date;
    for (unsigned month = 1; month <= 12; ++month) {
        const auto name = style.say("month." + std::to_string(month));
        auto letter = as_is(name.substr(0, 1)); // no month begins with an accent
        letter.critical = month == static_cast<unsigned>(limit.month());
        result.paragraphs.push_back(std::move(letter));
    }
    result.paragraphs.push_back(as_is(std::to_string(static_cast<int>(limit.year()))));
    return result;
}

Field raw_field(const kitchen::PlannedPackage& planned, const Style& style) {
    auto result = field(field_name::raw, planned.package.where.key("food"));
    if (planned.raw) {
        result.paragraphs.push_back(plain(style.say("label.raw")));
        result.paragraphs.back().critical = true;
    }
    return result;
}

Field servings_field(const kitchen::PlannedPackage& planned, const Style& style) {
    const auto line = [&](const char* head) {
        return figure(style.say(head), std::to_string(planned.package.servings));
    };
    auto result = one_paragraph(field_name::servings, line("label.serves-head"),
                                place_of_size(planned.package, "servings"));
    result.shorter = {{line("label.serves-short")}};
    return result;
}

Field bag_field(const kitchen::Bag& bag, const Style& style) {
    const auto number = std::to_string(bag.number);
    const auto of = std::to_string(bag.of);
    auto result = one_paragraph(field_name::bag, plain(style.say("label.bag", {number, of})), {});
    result.shorter = {{as_is(style.say("label.bag-short", {number, of}))}}; // 1/2 is no half
    return result;
}

Field place_field(const kitchen::PlannedPackage& planned) {
    Field field{field_name::place, {}, planned.package.where.key("place")};
    if (!planned.package.place.empty()) {
        field.paragraphs = {plain(planned.package.place)};
        field.shorter = {{}};
    }
    return field;
}

Field id_field(const kitchen::Bag& bag) {
    return one_paragraph(field_name::id, as_is(unbroken(bag.id)), {});
}

Field made_field(const kitchen::PlannedPackage& planned, const Style& style) {
    const auto line = [&](const char* head) {
        return figure(style.say(head), say_date(planned.made, style.language));
    };
    auto result =
        one_paragraph(field_name::made, line("label.made"), planned.package.where.key("made"));
    result.shorter = {{line("label.made-short")}};
    return result;
}

Field keep_until_field(const kitchen::PlannedPackage& planned, const Style& style) {
    const auto& keep = planned.keep_until;
    auto limit =
        figure(say_keep_until_head(keep, style.language), say_date(keep.date, style.language));
    limit.critical = keep.basis == kitchen::DateBasis::SetByCook; // safety, not quality
    auto result = one_paragraph(field_name::use_by, limit, planned.package.where.key("use_by"));
    limit.label = style.say(limit.critical ? "label.use-by-short" : "label.best-by-short");
    result.shorter = {{std::move(limit)}};
    return result;
}

Field limit_phrase_field(const kitchen::PlannedPackage& planned, const Style& style) {
    const auto limit = keep_until_field(planned, style);
    const auto phrase = [](const Paragraph& of) {
        auto words = as_is(with_no_break_spaces(of.label));
        words.critical = of.critical;
        return words;
    };
    auto result =
        one_paragraph(field_name::limit_phrase, phrase(limit.paragraphs.front()), limit.where);
    result.shorter = {{phrase(limit.said(1).front())}};
    return result;
}

Field limit_date_field(const kitchen::PlannedPackage& planned, const Style& style) {
    auto limit = keep_until_field(planned, style);
    auto& date = limit.paragraphs.front();
    date.label.clear();
    return one_paragraph(field_name::limit_date, std::move(date), limit.where);
}

Field thaw_field(const kitchen::PlannedPackage& planned, const Style& style) {
    const auto line = [&](Form form) {
        const bool never = planned.package.thaw.method == kitchen::ThawMethod::FromFrozen &&
                           planned.other_thaws.empty();
        auto thaw = labelled(never ? style.say("label.do-not-thaw") : style.say("label.thaw"),
                             say_thaw(planned, style.language, form));
        thaw.critical = never;
        const auto time = kitchen::thaw_time(planned);
        return time ? with_strong_time(std::move(thaw), *time, style.language) : thaw;
    };
    auto result = one_paragraph(field_name::thaw, line(Form::Full), planned.package.thaw.where);
    result.shorter = {{line(Form::Tight)}, {line(Form::Short)}, {line(Form::Least)}};
    return result;
}

Field other_thaws_field(const kitchen::PlannedPackage& planned, const Style& style) {
    auto result = field(field_name::other_thaws, planned.package.thaw.where);
    std::vector<Paragraph> least;
    for (const auto& way : planned.other_thaws) {
        const auto line = [&](Form form) {
            return labelled(style.say("thaw.or"),
                            say_other_thaw(planned, way, style.language, form));
        };
        result.paragraphs.push_back(line(Form::Full));
        least.push_back(line(Form::Least));
    }
    if (!least.empty()) {
        result.shorter = {std::move(least)};
    }
    return result;
}

namespace {

const kitchen::Caution* still_hard_advice(const kitchen::PlannedPackage& planned) {
    const auto advice =
        std::ranges::find(planned.cautions, "thaw-still-hard", &kitchen::Caution::id);
    return advice == planned.cautions.end() ? nullptr : &*advice;
}

/// Behind the way to thaw that it is about, which need not be named again.
void add_advice(Paragraph& way, const kitchen::Caution& advice, const Style& style) {
    const auto words = style.say("caution." + advice.id, advice.values);
    const bool ended = !way.spans.empty() && way.spans.back().text.ends_with('.');
    way.spans.push_back({typeset_text((ended ? " " : ". ") + words), Emphasis::Plain});
}

} // namespace

Field thaw_field_with_advice(const kitchen::PlannedPackage& planned, const Style& style) {
    auto result = thaw_field(planned, style);
    const auto* advice = still_hard_advice(planned);
    if (advice != nullptr && advice->thawed_by.empty()) {
        add_advice(result.paragraphs.front(), *advice, style);
    }
    return result;
}

Field other_thaws_field_with_advice(const kitchen::PlannedPackage& planned, const Style& style) {
    auto result = other_thaws_field(planned, style);
    const auto* advice = still_hard_advice(planned);
    for (std::size_t i = 0; advice != nullptr && i < result.paragraphs.size(); ++i) {
        const auto method = planned.other_thaws[i].package.thaw.method;
        if (std::ranges::find(advice->thawed_by, method) != advice->thawed_by.end()) {
            add_advice(result.paragraphs[i], *advice, style);
        }
    }
    return result;
}

Field contains_field(const kitchen::PlannedPackage& planned, const Style& style) {
    auto result = field(field_name::contains, planned.package.where.key("contains"));
    const auto add = [&](const std::vector<kitchen::DeclaredAllergen>& declared,
                         const char* label) {
        const auto list = say_contains(declared, style);
        if (!list.empty()) {
            result.paragraphs.push_back(labelled(style.say(label), list));
        }
    };
    add(planned.allergens, "label.contains");
    add(planned.may_contain, "label.may-contain");
    if (result.paragraphs.size() > 1) {
        result.shorter = {{in_one(result.paragraphs)}};
    }
    return result;
}

Field contains_field_with_added(const kitchen::PlannedPackage& planned, const Style& style) {
    auto result = contains_field(planned, style);
    auto added = kitchen::added_allergens(planned.package, planned.allergens, *style.allergens);
    std::erase_if(added, [&](const kitchen::DeclaredAllergen& one) {
        return std::ranges::all_of(one.meant, [&](const kitchen::NamedAllergen& named) {
            return is_declared(named, planned.allergens, *style.allergens);
        });
    });
    const auto add_to = [&](std::vector<Paragraph>& form) {
        const auto more = labelled(style.say("door-list.added"), say_contains(added, style));
        if (form.empty()) {
            form.push_back(more);
        } else {
            add_sentence(form.back(), more.label, more.spans);
        }
    };
    if (!added.empty()) {
        add_to(result.paragraphs);
        std::ranges::for_each(result.shorter, add_to);
    }
    return result;
}

Field note_field(const kitchen::PlannedPackage& planned, const Style& style) {
    auto result = field(field_name::note, planned.package.where.key("note"));
    if (!planned.package.note.empty()) {
        result.paragraphs.push_back(labelled(style.say("label.notes"), planned.package.note));
        result.shorter = {{labelled(style.say("label.notes"), style.say("label.see-card"))}};
    }
    return result;
}

Field kitchen_field(const std::string& kitchen, const Style& style) {
    auto result = field(field_name::kitchen, KeyPath{"day.kitchen"});
    if (!kitchen.empty()) {
        result.paragraphs.push_back(plain(style.say("label.from-kitchen", {kitchen})));
    }
    return result;
}

Field local_rules_field(const Style& style) {
    auto result =
        one_paragraph(field_name::local_rules, plain(style.say("standing.local-rules")), {});
    result.shorter = {{plain(style.say("standing.local-rules-short"))}};
    return result;
}

std::string say_always_safe(const Style& style) {
    constexpr double always_safe = 0; // °F; USDA FSIS, Freezing and Food Safety
    return say_cold_limit(always_safe, style);
}

Field frozen_safe_field(const Style& style) {
    return one_paragraph(field_name::frozen_safe,
                         plain(style.say("standing.frozen-safe", {say_always_safe(style)})), {});
}

bool thaw_line_says(const kitchen::Caution& caution) {
    return caution.id == "thaw-cook-at-once" || caution.id == "thaw-no-days-left" ||
           caution.id == "cold-water-thaw" || caution.id == "thaw-still-hard"; // on cards
}

Field cautions_field(const kitchen::PlannedPackage& planned, kitchen::CautionLevel least,
                     const Style& style) {
    auto result = field(field_name::cautions, planned.package.where);
    for (const auto& caution : planned.cautions) {
        if (caution.level >= least && !thaw_line_says(caution)) {
            result.paragraphs.push_back(plain(say_caution(caution, style.language)));
        }
    }
    return result;
}

std::string say_caution(const kitchen::Caution& caution, const Language& language) {
    auto text = language.say("caution." + caution.id, caution.values);
    return caution.thawed_by.empty() || caution.level < kitchen::CautionLevel::Card
               ? text
               : language.say("thaw.if", {say_thawed_by(caution.thawed_by, language), text});
}

std::string say_addition(const kitchen::Finish& finish, const Style& style, Waits waits) {
    auto text = say_quantity(finish.add, style);
    if (!finish.bag.empty() && waits == Waits::Said) {
        text += " (" + finish.bag + ")";
    }
    return text;
}

bool goes_in_with_previous(const std::vector<kitchen::Finish>& finish, std::size_t i) {
    return i > 0 && finish[i - 1].when == finish[i].when;
}

} // namespace thawslip::wording
