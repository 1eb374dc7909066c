#include "unit/code/random_messages.h"

#include <array>

namespace thawslip::test_support {
namespace {

using namespace code;
using std::chrono::minutes;

constexpr std::array words = {
    "squash",  "lentil", "AND",   "1/2",    "cup",   "stock",  "*",    "-",
    "at",      "add",    "in",    "to",     "for",   "bag",    "END",  "steps",
    "10",      "20 min", "1,000", "18:30",  "note:", "(baby)", "www.", "x.com",
    "http://", "0800",   "55512", "+44",    "step.", "7-9 h",  "'",    "see",
    "card",    "C",      "F",     "serves", "made",  "2026",   "oct",  "contains"};

std::vector<std::string> random_list(Random& random, std::size_t most) {
    std::vector<std::string> list(random.below(most + 1));
    for (std::string& each : list) {
        each = random_words(random, 40);
    }
    return list;
}

kitchen::Date random_date(Random& random) {
    const std::chrono::sys_days start = std::chrono::year{2024} / 1 / 1;
    return start + std::chrono::days{random.below(4000)};
}

kitchen::When random_when(Random& random) {
    const auto anchor = static_cast<kitchen::When::Anchor>(random.below(5));
    return {anchor, minutes{random.below(900)}};
}

Cooking random_cooking(Random& random) {
    Cooking cooking;
    cooking.in = random_words(random, 20);
    cooking.setting = random_words(random, 12);
    if (!random.chance(4)) {
        const minutes low{random.below(50) * (random.chance(2) ? 60 : 1)};
        cooking.time = kitchen::TimeRange{low, low + minutes{random.below(3) * 60}};
    }
    if (!random.chance(4)) {
        cooking.until = Target{static_cast<int>(random.below(3000)) - 300,
                               static_cast<kitchen::TemperatureScale>(random.below(2))};
    }
    return cooking;
}

OtherThaw random_thaw(Random& random) {
    OtherThaw way;
    way.thaw = static_cast<kitchen::ThawMethod>(random.below(4));
    if (!random.chance(3)) {
        const minutes from{random.below(90) * (random.chance(2) ? 60 : 1)};
        way.thaw_time = kitchen::TimeRange{from, from + minutes{random.below(3) * 30}};
    }
    way.placing = static_cast<kitchen::Placing>(random.below(3));
    if (!random.chance(3)) {
        way.cook_within_days = static_cast<int>(random.below(101));
    }
    return way;
}

} // namespace

std::string random_words(Random& random, std::size_t longest) {
    std::string text;
    const std::size_t length = random.below(longest + 1);
    while (text.size() < length) {
        if (random.chance(6)) {
            text += static_cast<char>(' ' + static_cast<char>(random.below(95)));
        } else {
            text += words.at(random.below(words.size()));
            text += random.chance(3) ? "" : " ";
        }
    }
    return text;
}

Message random_message(Random& random) {
    Message message;
    message.dish = random_words(random, 50);
    message.bag_id = random_words(random, 8);
    message.note = random_words(random, 40);
    message.cooking = random_cooking(random);
    message.steps = random_list(random, 4);
    message.raw = random.chance(3);
    message.cautions = random_list(random, 3);
    message.allergens = random_list(random, 3);
    message.may_contain = random_list(random, 2);
    if (!random.chance(5)) {
        message.servings = static_cast<int>(random.below(40));
        message.made = random_date(random);
    }
    if (!random.chance(5)) {
        message.keep_until =
            KeepUntil{random_date(random), static_cast<kitchen::DateBasis>(random.below(2))};
    }
    if (!random.chance(5)) {
        message.thaw = static_cast<kitchen::ThawMethod>(random.below(4));
        message.thaw_note = random_words(random, 20);
        if (!random.chance(3)) {
            const minutes from{random.below(90) * (random.chance(2) ? 60 : 1)};
            message.thaw_time = kitchen::TimeRange{from, from + minutes{random.below(3) * 30}};
        }
        message.placing = static_cast<kitchen::Placing>(random.below(3));
        if (!random.chance(3)) {
            message.cook_within_days = static_cast<int>(random.below(101));
        }
    }
    for (std::size_t i = random.chance(2) ? 0 : random.below(4); i > 0; --i) {
        message.other_thaws.push_back(random_thaw(random));
    }
    for (std::size_t i = random.below(5); i > 0; --i) {
        message.additions.push_back(
            {random_when(random), random_words(random, 30), random_words(random, 20)});
    }
    message.extent = random.chance(3) ? Extent::SeeCard : Extent::Whole;
    return message;
}

} // namespace thawslip::test_support
