#include "base/letters.h"
#include "base/list.h"
#include "kitchen/texts/text.h"
#include "wording/goods_file.h"

#include <algorithm>
#include <array>

// How several of a thing are called. Nothing is guessed: a word that the table does not know, or an
// adjective that might have to change and is none of its sizes, leaves all as it is written.

namespace thawslip::wording {
namespace {

using GoodsRole = GoodsWord::Role;

/// A stretch of an item between spaces, up to the first comma or bracket.
struct Token {
    std::size_t begin = 0;
    std::size_t end = 0;
};

std::vector<Token> tokens_of(std::string_view item) {
    const auto stop = std::min(item.find_first_of(",(;"), item.size());
    std::vector<Token> tokens;
    for (std::size_t at = 0; at < stop;) {
        const auto end = std::min(item.find(' ', at), stop);
        if (end > at) {
            tokens.push_back({at, end});
        }
        at = end + 1;
    }
    return tokens;
}

std::string fold(std::string_view text) {
    return joined(kitchen::words_of(text), " ");
}

/// The word of a role that some tokens are, in the singular as the table writes it; a word of the
/// style's own language before others.
const GoodsWord* singular_word(const Goods& goods, std::string_view text,
                               std::initializer_list<GoodsRole> roles, std::string_view preferred) {
    const auto found = goods.words.find(goods_key(kitchen::words_of(text)));
    const GoodsWord* best = nullptr;
    if (found == goods.words.end()) {
        return best;
    }
    for (const auto& word : found->second) {
        const bool fits = std::ranges::find(roles, word.role) != roles.end() &&
                          !word.language.empty() && fold(word.one) == fold(text);
        if (fits && (best == nullptr || word.language == preferred)) {
            best = &word;
        }
    }
    return best;
}

bool is_size(const Goods& goods, std::string_view text, std::string_view language) {
    const auto* word = singular_word(goods, text, {GoodsRole::Size}, language);
    return word != nullptr && word->language == language;
}

/// Written as `like` is: with a capital or none.
std::string in_case_of(std::string_view like, std::string word) {
    if (!like.empty() && !word.empty() && is_latin_letter(like.front())) {
        word.front() = is_upper(like.front()) ? to_upper(word.front()) : to_lower(word.front());
    }
    return word;
}

/// The noun at `first` to `last`, what stands before and behind it being sizes of its language.
struct Noun {
    std::size_t first = 0;
    std::size_t last = 0;
    const GoodsWord* word = nullptr;
};

std::string_view text_of(std::string_view item, const std::vector<Token>& tokens, std::size_t first,
                         std::size_t last) {
    return item.substr(tokens[first].begin, tokens[last].end - tokens[first].begin);
}

bool all_sizes(const Goods& goods, std::string_view item, const std::vector<Token>& tokens,
               std::size_t first, std::size_t end, std::string_view language) {
    for (auto i = first; i < end; ++i) {
        if (!is_size(goods, text_of(item, tokens, i, i), language)) {
            return false;
        }
    }
    return true;
}

/// Behind a measure anything may stand: "clove garlic", "diente de ajo". Behind a thing only what
/// Spanish has there, and there it changes too.
bool fits_in(const Goods& goods, std::string_view item, const std::vector<Token>& tokens,
             const Noun& noun) {
    const auto& language = noun.word->language;
    if (!all_sizes(goods, item, tokens, 0, noun.first, language)) {
        return false;
    }
    const auto end = tokens.size();
    return noun.word->role == GoodsRole::Measure || noun.last + 1 == end ||
           (language == "es" && all_sizes(goods, item, tokens, noun.last + 1, end, language));
}

std::optional<Noun> noun_of(const Goods& goods, std::string_view item,
                            const std::vector<Token>& tokens, std::string_view preferred) {
    for (std::size_t first = 0; first < tokens.size(); ++first) {
        for (auto last = std::min(first + goods.longest, tokens.size()); last-- > first;) {
            const auto* word = singular_word(goods, text_of(item, tokens, first, last),
                                             {GoodsRole::Thing, GoodsRole::Measure}, preferred);
            if (word != nullptr && fits_in(goods, item, tokens, {first, last, word})) {
                return Noun{first, last, word};
            }
        }
    }
    return std::nullopt;
}

/// The item with the noun and the sizes behind it in the plural.
std::string replaced(const Goods& goods, std::string_view item, const std::vector<Token>& tokens,
                     const Noun& noun) {
    std::string text{item.substr(0, tokens[noun.first].begin)};
    text += in_case_of(text_of(item, tokens, noun.first, noun.last), noun.word->several);
    auto at = tokens[noun.last].end;
    const bool sizes_change = noun.word->role == GoodsRole::Thing && noun.word->language == "es";
    for (auto i = noun.last + 1; sizes_change && i < tokens.size(); ++i) {
        const auto* size =
            singular_word(goods, text_of(item, tokens, i, i), {GoodsRole::Size}, "es");
        text += item.substr(at, tokens[i].begin - at);
        text += size->several;
        at = tokens[i].end;
    }
    return text + std::string{item.substr(at)};
}

bool are_several(const kitchen::Quantity& total) {
    return total.unit == kitchen::Unit::Count && total.high && total.high->value() > 1.0;
}

bool has_role(const Goods& goods, std::string_view text, GoodsRole role) {
    const auto found = goods.words.find(goods_key(kitchen::words_of(text)));
    return found != goods.words.end() &&
           std::ranges::find(found->second, role, &GoodsWord::role) != found->second.end();
}

} // namespace

std::optional<MeasuredThing> measured_thing(const Goods& goods, std::string_view item) {
    constexpr std::array<std::string_view, 3> joining = {"of", "de", "del"};
    const auto tokens = tokens_of(item);
    if (tokens.size() < 2 || !has_role(goods, text_of(item, tokens, 0, 0), GoodsRole::Measure) ||
        has_role(goods, text_of(item, tokens, 0, tokens.size() - 1), GoodsRole::Thing)) {
        return std::nullopt;
    }
    const auto second = text_of(item, tokens, 1, 1);
    const std::size_t thing = std::ranges::find(joining, second) == joining.end() ? 1 : 2;
    if (thing >= tokens.size()) {
        return std::nullopt;
    }
    return MeasuredThing{std::string{text_of(item, tokens, 0, 0)},
                         std::string{item.substr(tokens[thing].begin)}};
}

std::string in_number(const Goods& goods, const kitchen::Quantity& total, const Style& style) {
    if (!are_several(total)) {
        return total.item;
    }
    const auto tokens = tokens_of(total.item);
    const auto noun = noun_of(goods, total.item, tokens, style.language.say("goods.language"));
    return noun ? replaced(goods, total.item, tokens, *noun) : total.item;
}

} // namespace thawslip::wording
