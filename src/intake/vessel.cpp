#include "intake/vessel.h"

#include "base/nearest.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/phrases.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <array>
#include <vector>

namespace thawslip::intake {
namespace {

using kitchen::Mention;
using kitchen::Section;
using kitchen::Vessel;
using kitchen::WordedText;

/// What the lexicon calls an appliance.
struct Appliance {
    std::string_view meaning;
    Vessel vessel;
};

/// Of several that a text names the first here counts, so that a pan in the oven is in the oven and
/// "slow cooker or pot" keeps to the rules of a slow cooker.
constexpr auto appliances = std::to_array<Appliance>({
    {"slow cooker", Vessel::SlowCooker},
    {"multicooker", Vessel::SlowCooker},
    {"rice cooker", Vessel::SlowCooker},
    {"water bath", Vessel::SlowCooker},
    {"haybox", Vessel::SlowCooker},
    {"warmer", Vessel::Warmer},
    {"pressure cooker", Vessel::PressureCooker},
    {"microwave", Vessel::Microwave},
    {"steamer", Vessel::Steamer},
    {"oven", Vessel::Oven},
    {"grill", Vessel::Grill},
    {"pan", Vessel::Pan},
    {"pot", Vessel::Pot},
});

bool names(const WordedText& text, std::vector<Mention> all, std::string_view appliance) {
    std::erase_if(all, [&](const Mention& each) { return each.meaning != appliance; });
    return kitchen::is_meant(text, all);
}

/// How many slips a name of this length may hide: "hot" is near "pot" but no slip for it.
std::size_t slips(std::size_t letters) {
    return letters < 4 ? 0 : letters < 8 ? 1 : 2;
}

bool is_near(std::string_view written, std::string_view name) {
    return edit_distance(written, name) <= slips(name.size());
}

/// Whether a word begins nearly with a part such as "schongar-".
bool begins_nearly(std::string_view word, std::string_view part) {
    constexpr std::size_t shortest = 5;
    if (part.size() < shortest || word.size() < part.size() + 2) {
        return false;
    }
    const std::size_t sizes[] = {part.size() - 1, part.size(), part.size() + 1};
    return std::ranges::any_of(
        sizes, [&](std::size_t size) { return edit_distance(word.substr(0, size), part) <= 1; });
}

/// First parts of compounds that name a slow cooker, in all languages: "schongar".
std::vector<std::string_view> parts_of_slow_cookers() {
    std::vector<std::string_view> parts;
    for (const auto* row : kitchen::rows_of(Section::Appliance)) {
        if (row->meaning == "slow cooker" && row->phrase.ends_with('-')) {
            parts.push_back(row->words);
        }
    }
    return parts;
}

/// A slip in the first part of a compound, "Shcongartopf", must not leave its end, a pot.
bool begins_as_slow_cooker(const std::vector<std::string>& words) {
    static const auto parts = parts_of_slow_cookers();
    return std::ranges::any_of(parts, [&](std::string_view part) {
        return std::ranges::any_of(
            words, [&](const std::string& word) { return begins_nearly(word, part); });
    });
}

/// Whether as many words in a row as the phrase has are nearly the phrase; a short one only where
/// it is all that is written.
bool is_slip_for(const std::vector<std::string>& words, const kitchen::LexiconRow& row) {
    constexpr std::size_t short_letters = 6;
    const auto name = row.words;
    const auto count = static_cast<std::size_t>(std::ranges::count(name, ' ')) + 1;
    if (name.size() < short_letters && words.size() != count) {
        return false;
    }
    for (std::size_t i = 0; i + count <= words.size(); ++i) {
        if (is_near(kitchen::words_at(words, i, count), name) ||
            (row.phrase.ends_with('-') && begins_nearly(words[i], name))) {
            return true;
        }
    }
    return false;
}

} // namespace

Vessel vessel_of(std::string_view in, std::string_view setting) {
    const auto text = kitchen::worded(in);
    const auto set = kitchen::worded(setting);
    const auto all = kitchen::mentions(text, Section::Appliance);
    const auto found = std::ranges::find_if(
        appliances, [&](const Appliance& each) { return names(text, all, each.meaning); });
    const bool may_be_slow = found == appliances.end() || found->vessel == Vessel::Pot;
    if (may_be_slow &&
        (kitchen::says(text, Section::Setting, "slow") || begins_as_slow_cooker(text.words))) {
        return Vessel::SlowCooker;
    }
    if (found == appliances.end()) {
        return Vessel::Other;
    }
    const bool under_pressure = kitchen::says(set, Section::Setting, "pressure") ||
                                kitchen::says(text, Section::Setting, "pressure");
    const bool slow = kitchen::says(set, Section::Setting, "slow");
    if (found->meaning == "multicooker" && under_pressure && !slow) {
        return Vessel::PressureCooker;
    }
    return found->vessel == Vessel::PressureCooker && slow ? Vessel::SlowCooker : found->vessel;
}

std::optional<NearVessel> nearest_vessel(std::string_view in) {
    const auto words = kitchen::words_of(in);
    const auto rows = kitchen::rows_of(Section::Appliance);
    for (const auto& appliance : appliances) {
        if (std::ranges::any_of(rows, [&](const kitchen::LexiconRow* row) {
                return row->meaning == appliance.meaning && is_slip_for(words, *row);
            })) {
            return NearVessel{std::string{appliance.meaning}, appliance.vessel};
        }
    }
    return std::nullopt;
}

bool cooks_like_slow_cooker(const kitchen::Cook& cook) {
    constexpr std::chrono::hours long_time{3};
    const auto set = kitchen::worded(cook.setting);
    const bool by_step = kitchen::says(set, Section::Setting, "low") ||
                         kitchen::says(set, Section::Setting, "heat") ||
                         kitchen::says(set, Section::Setting, "warm");
    return by_step && cook.time && cook.time->high >= long_time;
}

} // namespace thawslip::intake
