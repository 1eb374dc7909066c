#include "base/list.h"
#include "kitchen/allergens/allergens.h"
#include "kitchen/cautions/caution_topics.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/sentences.h"

#include <algorithm>
#include <iterator>
#include <set>

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view allergen_lists_source =
    "FDA, Questions and Answers Regarding Food Allergens, edition 5, 2025; Regulation (EU) "
    "1169/2011, Annex II";

/// One entry of `contains` or `may_contain`.
struct Entry {
    DeclaredAllergen declared;
    WordedText text;
    KeyPath where;
};

std::vector<Entry> entries(const Package& package) {
    std::vector<Entry> all;
    const auto add = [&](const std::vector<std::string>& list, const char* key) {
        for (std::size_t i = 0; i < list.size(); ++i) {
            all.push_back(
                {read_allergen(list[i]), worded(list[i]), package.where.key(key).index(i)});
        }
    };
    add(package.contains, "contains");
    add(package.may_contain, "may_contain");
    return all;
}

/// "None", "gluten-free", "sin nueces", "keine", "-": what is not in it.
bool is_denial(const Entry& entry) {
    const auto negations = mentions(entry.text, Section::Negation);
    const bool negated = std::ranges::any_of(negations, [](const Mention& mention) {
        return is_one_of(mention.meaning, {"not", "free", "nothing"});
    });
    const bool vegan =
        entry.declared.meant.empty() && !mentions(entry.text, Section::AllergenDenied).empty();
    return negated || vegan || entry.text.words.empty();
}

/// "May contain nuts", "Spuren von Sesam": what may be in it.
bool is_trace(const Entry& entry) {
    return says(entry.text, Section::Trace, "trace");
}

/// The allergens of an entry by the names of the list, as `may_contain` takes them.
std::string names_of(const Entry& entry, const AllergenList& list) {
    const auto& meant = entry.declared.meant;
    const auto quoted = [&](const NamedAllergen& named) {
        return "\"" + label_name(named, list) + "\"";
    };
    return meant.empty() ? "\"…\"" : joined(meant, ", ", quoted);
}

template <class Applies>
Findings entries_that(const Scene& scene, Applies applies) {
    Findings found;
    for (const auto& entry : entries(scene.package)) {
        if (applies(entry)) {
            found.push_back({{entry.declared.as_written}, entry.where});
        }
    }
    return found;
}

Findings denied(const Scene& scene) {
    return entries_that(scene,
                        [](const Entry& entry) { return is_denial(entry) && !is_trace(entry); });
}

Findings traces(const Scene& scene) {
    Findings found;
    for (const auto& entry : entries(scene.package)) {
        if (is_trace(entry)) {
            found.push_back(
                {{entry.declared.as_written, names_of(entry, *scene.settings.allergens)},
                 entry.where});
        }
    }
    return found;
}

bool is_unknown(const Entry& entry) {
    return entry.declared.meant.empty() && !is_denial(entry) && !is_trace(entry);
}

Findings unknown(const Scene& scene) {
    return entries_that(scene, [](const Entry& entry) {
        return is_unknown(entry) && !allergen_near(entry.declared.as_written);
    });
}

Findings misspelt(const Scene& scene) {
    Findings found;
    for (const auto& entry : entries(scene.package)) {
        const auto meant =
            is_unknown(entry) ? allergen_near(entry.declared.as_written) : std::nullopt;
        if (meant) {
            found.push_back({{entry.declared.as_written, *meant}, entry.where});
        }
    }
    return found;
}

Findings kind_not_named(const Scene& scene) {
    Findings found;
    for (const auto& entry : entries(scene.package)) {
        for (const auto& named : entry.declared.meant) {
            if (named.kind.empty() && must_name_kind(named.allergen, *scene.settings.allergens)) {
                found.push_back({{std::string{key(named.allergen)}}, entry.where});
            }
        }
    }
    return found;
}

/// Where food is named, and where a cook writes of what is stirred in or laid beside it.
std::vector<AllergenMention> allergens_of(const ReadText& read) {
    if (names_food(read.field)) {
        return mentioned_allergens(read.text);
    }
    const bool is_setting = read.field == FreeText::CookIn || read.field == FreeText::CookSetting;
    return is_setting ? std::vector<AllergenMention>{} : allergens_in_step(read.text);
}

/// Each allergen that a text names and `contains` does not, once, at the first words that name it.
/// \param as_trace whether `may_contain` names it: that is less than what the text says, unless the
/// text itself says no more
Findings not_contained(const Scene& scene, bool as_trace) {
    Findings found;
    const auto& list = *scene.settings.allergens;
    auto known = read_allergens(scene.package.contains);
    const auto traces = read_allergens(scene.package.may_contain);
    for (const auto& read : scene.texts) {
        const bool says_trace = says(read.text, Section::Trace, "trace");
        for (const auto& mention : allergens_of(read)) {
            const bool is_trace = is_declared(mention.named, traces, list);
            if (!is_listed(mention.named, list) || is_declared(mention.named, known, list) ||
                is_trace != as_trace || (is_trace && says_trace)) {
                continue;
            }
            found.push_back({{mention.words, label_name(mention.named, list)}, read.where});
            known.push_back({mention.words, {mention.named}});
        }
    }
    return found;
}

Findings undeclared(const Scene& scene) {
    return not_contained(scene, false);
}

Findings only_as_trace(const Scene& scene) {
    return not_contained(scene, true);
}

/// Printed as what is in the food and as what may be: a reader cannot know which holds.
Findings in_both(const Scene& scene) {
    Findings found;
    const auto& list = *scene.settings.allergens;
    const auto names = [&](const DeclaredAllergen& entry) {
        return mapped<std::set<std::string>>(
            entry.meant, [&](const NamedAllergen& named) { return label_name(named, list); });
    };
    std::set<std::string> contained;
    for (const auto& entry : read_allergens(scene.package.contains)) {
        contained.merge(names(entry));
    }
    const auto& traces = scene.package.may_contain;
    for (std::size_t i = 0; i < traces.size(); ++i) {
        const auto labels = names(read_allergen(traces[i]));
        if (!labels.empty() && std::ranges::includes(contained, labels)) {
            found.push_back({{traces[i]}, scene.package.where.key("may_contain").index(i)});
        }
    }
    return found;
}

/// Whether a sentence says that the food suits those whom `whom` means, and warns of neither.
bool suits(const WordedText& sentence, std::string_view whom) {
    return is_meant(sentence, mentions(sentence, Section::Allergy, "suits")) &&
           is_meant(sentence, mentions(sentence, Section::Allergy, whom));
}

/// Adds what a mention names, and what is absent as well where that is.
void add_absent(std::vector<Allergen>& absent, const Mention& mention) {
    for (const auto& named : read_allergen(std::string{mention.meaning}).meant) {
        std::ranges::copy(denied_with(named.allergen), std::back_inserter(absent));
    }
}

/// What is not in food that suits whom a text says: "safe for people with a nut allergy". Who is
/// allergic to nothing that is named may be so to anything.
std::vector<Allergen> absent_for_the_allergic(const ReadText& read) {
    std::vector<Allergen> absent;
    if (!says(read.text, Section::Allergy, "suits")) {
        return absent; // most texts, of which none is cut into sentences
    }
    for (const auto& sentence : sentences(read.written)) {
        const bool of_any = suits(sentence, "allergic");
        if (!of_any && !suits(sentence, "avoids")) {
            continue;
        }
        const auto before = absent.size();
        for (const auto& mention : mentions(sentence, Section::Allergen)) {
            add_absent(absent, mention);
        }
        if (of_any && absent.size() == before) {
            std::ranges::transform(allergen_names, std::back_inserter(absent),
                                   [](const auto& allergen) { return allergen.value; });
        }
    }
    return absent;
}

/// What a text says the food is free of: "dairy-free", "ohne Nüsse", "vegan".
std::vector<Allergen> claimed_absent(const ReadText& read) {
    const auto& text = read.text;
    auto absent = absent_for_the_allergic(read);
    const auto named = mentions(text, Section::Allergen);
    const auto denied = mentions(text, Section::AllergenDenied);
    for (std::size_t i = 0; i < named.size(); ++i) {
        if (is_denied(text, named, i)) {
            add_absent(absent, named[i]);
        }
    }
    for (std::size_t i = 0; i < denied.size(); ++i) {
        if (!is_denied(text, denied, i)) { // "not suitable for coeliacs"
            add_absent(absent, denied[i]);
        }
    }
    return absent;
}

/// The entry of a list that declares an allergen of the same class.
std::optional<std::string> entry_of(const std::vector<std::string>& list, Allergen allergen) {
    for (const auto& entry : read_allergens(list)) {
        for (const auto& named : entry.meant) {
            if (named.allergen == allergen) {
                return entry.as_written;
            }
        }
    }
    return std::nullopt;
}

std::optional<std::string> declared(const Scene& scene, Allergen allergen) {
    return entry_of(scene.package.contains, allergen);
}

std::optional<std::string> there_by_chance(const Scene& scene, Allergen allergen) {
    return entry_of(scene.package.may_contain, allergen);
}

/// The words of dish, ingredients or additions that name one.
std::optional<std::string> named_in_food(const Scene& scene, Allergen allergen) {
    for (const auto& read : scene.texts) {
        if (!names_food(read.field)) {
            continue;
        }
        for (const auto& mention : mentioned_allergens(read.text)) {
            if (mention.named.allergen == allergen) {
                return mention.words;
            }
        }
    }
    return std::nullopt;
}

/// Where a text of these fields promises that the food is free of what is in it.
template <class InFood>
Findings promises(const Scene& scene, std::initializer_list<FreeText> fields, InFood in_food) {
    Findings found;
    for (const auto& read : scene.texts) {
        const auto absent =
            contains(fields, read.field) ? claimed_absent(read) : std::vector<Allergen>{};
        for (const auto allergen : absent) {
            if (const auto there = in_food(scene, allergen)) {
                found.push_back({{read.written, *there}, read.where});
                break;
            }
        }
    }
    return found;
}

Findings false_promise(const Scene& scene) {
    return promises(scene, {FreeText::Dish}, declared);
}

/// A note may say what is left out for somebody.
Findings doubtful_promise(const Scene& scene) {
    if (!false_promise(scene).empty()) {
        return {};
    }
    const auto in_food = [](const Scene& asked, Allergen allergen) {
        const auto named = named_in_food(asked, allergen);
        return named ? named : there_by_chance(asked, allergen);
    };
    auto found = promises(scene, {FreeText::Dish, FreeText::Note}, in_food);
    return found.empty() ? promises(scene, {FreeText::Note}, declared) : found;
}

constexpr CautionRule allergens_rows[] = {
    refusal("allergen-promise", allergen_lists_source, false_promise,
            "\"{0}\" promises to be free of what contains declares: \"{1}\"",
            "leave the promise out: no print says that a food is free from something"),
    refusal(
        "allergen-denied", allergen_lists_source, denied,
        "\"{0}\" says what is not in the food; expected the names of allergens that are in it",
        "name only those, or leave the key out: no print says that a food is free from something"),
    refusal("allergen-trace", allergen_lists_source, traces,
            "\"{0}\" says what may be in the food by chance; expected may_contain = [{1}]",
            "contains takes the names of what is in it, may_contain the names of what may be"),
    refusal("allergen-in-both", allergen_lists_source, in_both,
            "\"{0}\" stands in contains and in may_contain; expected it in one of them",
            "contains where it is in the food, may_contain where it may be there by chance"),
    {"allergen-promise-doubtful", CautionLevel::Report, allergen_lists_source, doubtful_promise},
    {"allergen-undeclared", CautionLevel::Check, allergen_lists_source, undeclared},
    {"allergen-only-as-trace", CautionLevel::Check, allergen_lists_source, only_as_trace},
    {"allergen-kind", CautionLevel::Check, allergen_lists_source, kind_not_named},
    {"allergen-unknown", CautionLevel::Check, allergen_lists_source, unknown},
    {"allergen-misspelt", CautionLevel::Report, allergen_lists_source, misspelt},
};

} // namespace

std::span<const CautionRule> allergen_rules() {
    return allergens_rows;
}

} // namespace thawslip::kitchen
