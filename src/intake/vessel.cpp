#include "intake/vessel.h"

#include "base/nearest.h"
#include "kitchen/text.h"

#include <algorithm>
#include <array>
#include <span>
#include <vector>

namespace thawslip::intake {
namespace {

using kitchen::Vessel;

struct Name {
    std::string_view words;
    Vessel vessel;
};

/// The first that stands in the text wins, so that a microwave oven is a microwave and a pan in
/// the oven is in the oven. Common practice, no source.
constexpr auto names = std::to_array<Name>({
    {"slow cooker", Vessel::SlowCooker},
    {"slowcooker", Vessel::SlowCooker},
    {"pressure cooker", Vessel::PressureCooker},
    {"microwave", Vessel::Microwave},
    {"dutch oven", Vessel::Pot},
    {"steamer", Vessel::Steamer},
    {"oven", Vessel::Oven},
    {"roasting tin", Vessel::Oven},
    {"roasting tray", Vessel::Oven},
    {"baking dish", Vessel::Oven},
    {"baking tin", Vessel::Oven},
    {"baking tray", Vessel::Oven},
    {"grill", Vessel::Grill},
    {"broiler", Vessel::Grill},
    {"barbecue", Vessel::Grill},
    {"pan", Vessel::Pan},
    {"skillet", Vessel::Pan},
    {"wok", Vessel::Pan},
    {"pot", Vessel::Pot},
    {"saucepan", Vessel::Pot},
    {"stockpot", Vessel::Pot},
    {"casserole", Vessel::Pot},
    {"kettle", Vessel::Pot},
    {"cauldron", Vessel::Pot},
});

std::string joined(std::span<const std::string> words) {
    std::string text;
    for (const auto& word : words) {
        text += (text.empty() ? "" : " ") + word;
    }
    return text;
}

std::size_t count_words(std::string_view text) {
    return static_cast<std::size_t>(std::ranges::count(text, ' ')) + 1;
}

/// Whether as many words of `words` as the name has, somewhere in a row, are nearly the name.
bool is_nearly(const Name& name, std::span<const std::string> words) {
    constexpr std::size_t shortest = 6; // "hot" is near "pot" but no slip for it
    const auto count = count_words(name.words);
    const std::array<std::string, 1> candidate{std::string{name.words}};
    for (std::size_t i = 0; i + count <= words.size(); ++i) {
        const bool alone = words.size() == count && name.words.size() >= 4;
        if ((alone || name.words.size() >= shortest) &&
            nearest(joined(words.subspan(i, count)), candidate)) {
            return true;
        }
    }
    return false;
}

} // namespace

Vessel vessel_of(std::string_view text) {
    const auto words = " " + joined(kitchen::words_of(text)) + " ";
    const auto found = std::ranges::find_if(names, [&words](const Name& name) {
        return words.find(" " + std::string{name.words} + " ") != std::string::npos;
    });
    return found == names.end() ? Vessel::Other : found->vessel;
}

std::optional<std::string> nearest_vessel(std::string_view text) {
    const auto words = kitchen::words_of(text);
    const auto found =
        std::ranges::find_if(names, [&words](const Name& name) { return is_nearly(name, words); });
    return found == names.end() ? std::nullopt : std::optional{std::string{found->words}};
}

} // namespace thawslip::intake
