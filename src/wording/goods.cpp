#include "wording/goods.h"

#include "base/list.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/texts/text.h"
#include "wording/goods_file.h"

#include <algorithm>

namespace thawslip::wording {
namespace {

using GoodsRole = GoodsWord::Role;

/// What an item is, without what is done to it: up to a comma, a bracket, or a word like "in".
std::string head_of(std::string_view item) {
    std::string head{item.substr(0, item.find_first_of(",(;"))};
    for (const std::string_view word :
         {" in ", " with ", " for ", " mit ", " für ", " zum ", " con ", " en ", " para "}) {
        head = head.substr(0, head.find(word, 1));
    }
    return head;
}

/// A word of the table at a place of an item.
struct Match {
    std::size_t first = 0;
    std::size_t count = 1;
    const GoodsWord* word = nullptr;
};

void add_at(std::vector<Match>& matches, const Goods& goods, const std::vector<std::string>& words,
            std::size_t first) {
    for (auto count = std::min(goods.longest, words.size() - first); count > 0; --count) {
        const auto found = goods.words.find(goods_key(std::span{words}.subspan(first, count)));
        if (found != goods.words.end()) {
            for (const auto& word : found->second) {
                matches.push_back({first, count, &word});
            }
            return;
        }
    }
}

/// "Kirschtomaten" ends in "tomaten": the longest word that a compound ends in.
void add_compound(std::vector<Match>& matches, const Goods& goods, const std::string& word,
                  std::size_t place) {
    constexpr std::size_t least_front = 3;
    constexpr std::size_t least_head = 4;
    for (auto i = least_front; i + least_head <= word.size(); ++i) {
        const auto found = goods.words.find(kitchen::food_stem(word.substr(i)));
        if (found == goods.words.end()) {
            continue;
        }
        for (const auto& each : found->second) {
            if (each.language == "de" && each.role == GoodsRole::Thing) {
                matches.push_back({place, 1, &each});
            }
        }
        if (!matches.empty() && matches.back().first == place) {
            return;
        }
    }
}

std::vector<Match> matches_in(const Goods& goods, const std::vector<std::string>& words) {
    std::vector<Match> matches;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto before = matches.size();
        add_at(matches, goods, words, i);
        if (matches.size() == before) {
            add_compound(matches, goods, words[i], i);
        }
    }
    return matches;
}

/// Whether an item is worded in Spanish, where what it is stands first.
bool is_spanish(const std::vector<std::string>& words, const std::vector<Match>& matches) {
    constexpr std::string_view joints[] = {"de", "del", "al", "con"};
    const bool has_joint = std::ranges::any_of(words, [&](const std::string& word) {
        return std::ranges::find(joints, word) != std::end(joints);
    });
    return has_joint || std::ranges::all_of(matches, [](const Match& match) {
               return match.word->language == "es";
           });
}

/// The one that says what it is: the cook's own word, then the longest, then by word order.
const Match* deciding(const std::vector<std::string>& words, const std::vector<Match>& things) {
    const bool first_wins = is_spanish(words, things);
    const Match* best = nullptr;
    for (const auto& match : things) {
        const auto rank = [](const Match& one) {
            return std::pair{one.word->language.empty(), one.count};
        };
        if (best == nullptr || rank(match) > rank(*best) ||
            (rank(match) == rank(*best) && !first_wins && match.first > best->first)) {
            best = &match;
        }
    }
    return best;
}

template <class Is>
std::vector<Match> those(const std::vector<Match>& matches, Is is) {
    std::vector<Match> found;
    std::ranges::copy_if(matches, std::back_inserter(found), is);
    return found;
}

std::vector<Match> of_role(const std::vector<Match>& matches, GoodsRole role) {
    return those(matches, [role](const Match& match) { return match.word->role == role; });
}

/// Whether a text has the word as it is written: German "Minze" shares its stem with "mince".
bool is_written_so(const std::vector<std::string>& words, const Match& match) {
    const auto said = std::span{words}.subspan(match.first, match.count);
    return std::ranges::equal(said, kitchen::words_of(match.word->one)) ||
           std::ranges::equal(said, kitchen::words_of(match.word->several));
}

/// What is named: of a place the words that are written so, where there are any; and no measure,
/// where something else is named, so that a "filete de merluza" is hake.
std::vector<Match> things_in(const std::vector<std::string>& words,
                             const std::vector<Match>& matches) {
    auto things = of_role(matches, GoodsRole::Thing);
    const auto written = those(things, [&](const Match& one) { return is_written_so(words, one); });
    const auto measures = of_role(matches, GoodsRole::Measure);
    const auto stands_in = [](const std::vector<Match>& some, const Match& match) {
        return contains(mapped(some, &Match::first), match.first) && !match.word->language.empty();
    };
    std::erase_if(things, [&](const Match& thing) {
        return stands_in(written, thing) && !is_written_so(words, thing);
    });
    const auto measured =
        those(things, [&](const Match& thing) { return !stands_in(measures, thing); });
    return measured.empty() ? things : measured;
}

/// The kind of what decides. "Cod steaks", "carne de cangrejo": a fish's cuts are called as meat's
/// are.
std::size_t kind_said(const Goods& goods, const Match& deciding, const std::vector<Match>& things) {
    const auto is_of = [&goods](const Match& thing, std::string_view key) {
        return goods.kinds[thing.word->kind].key == key;
    };
    const auto fish =
        std::ranges::find_if(things, [&](const Match& thing) { return is_of(thing, "fish"); });
    const bool is_own = deciding.word->language.empty();
    return fish != things.end() && is_of(deciding, "meat") && !is_own ? fish->word->kind
                                                                      : deciding.word->kind;
}

} // namespace

std::optional<std::size_t> kind_of(const Goods& goods, std::string_view item) {
    for (const auto& text : {head_of(item), std::string{item}}) {
        const auto words = kitchen::words_of(text);
        const auto matches = matches_in(goods, words);
        const auto things = things_in(words, matches);
        const auto* thing = deciding(words, things);
        const bool is_own = thing != nullptr && thing->word->language.empty();
        const auto winners = of_role(matches, GoodsRole::Wins);
        if (!winners.empty() && !is_own) {
            return winners.front().word->kind;
        }
        if (thing != nullptr) {
            return kind_said(goods, *thing, things);
        }
    }
    return std::nullopt;
}

bool is_bought(const Goods& goods, std::string_view item) {
    const auto words = kitchen::words_of(head_of(item));
    const auto found = goods.words.find(goods_key(words));
    return found == goods.words.end() ||
           std::ranges::none_of(
               found->second, [](const GoodsWord& word) { return word.role == GoodsRole::Whole; });
}

std::string say_kind(const Goods& goods, std::optional<std::size_t> kind, const Style& style) {
    if (!kind) {
        return style.say("goods.other");
    }
    const auto& [key, name] = goods.kinds[*kind];
    return key.empty() ? name : style.say("goods." + key);
}

} // namespace thawslip::wording
