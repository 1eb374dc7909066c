#include "wording/goods_file.h"

#include "base/letters.h"
#include "base/list.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/texts/text.h"
#include "toml/file_table.h"
#include "toml/reader.h"
#include "wording/shipped.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace thawslip::wording {
namespace {

using GoodsRole = GoodsWord::Role;

constexpr std::size_t most_kinds = 40;
constexpr std::size_t most_words = 500;
constexpr std::size_t most_characters = 60;
constexpr std::array languages{"en", "es", "de"};

std::string key_of_text(std::string_view text) {
    return goods_key(kitchen::words_of(text));
}

void add_under(Goods& goods, const std::string& key, const GoodsWord& word) {
    if (key.empty()) {
        return;
    }
    auto& same = goods.words[key];
    const auto is_it = [&](const GoodsWord& one) {
        return one.role == word.role && one.language == word.language && one.kind == word.kind;
    };
    if (std::ranges::none_of(same, is_it)) {
        same.push_back(word);
    }
    goods.longest =
        std::max(goods.longest, static_cast<std::size_t>(std::ranges::count(key, ' ')) + 1);
}

/// The words of a list in each language.
void add_languages(Goods& goods, toml::Table& table, GoodsRole role, std::size_t kind) {
    for (const auto* language : languages) {
        for (const auto& written : table.lines(language, most_words, most_characters)) {
            add_word(goods, written, {.role = role, .kind = kind, .language = language});
        }
    }
}

void add_list(Goods& goods, toml::Table& root, const char* name, GoodsRole role) {
    if (auto table = root.table(name)) {
        add_languages(goods, *table, role, 0);
    }
}

Goods read_shipped(toml::Table& root) {
    Goods goods;
    for (auto& table : root.tables("kind", most_kinds)) {
        const auto kind = goods.kinds.size();
        goods.kinds.push_back({table.line("key", most_characters).value_or(""), {}});
        const bool whole = table.boolean("whole").value_or(false);
        add_languages(goods, table, whole ? GoodsRole::Whole : GoodsRole::Thing, kind);
        for (const auto& word : table.lines("wins", most_words, most_characters)) {
            add_word(goods, word, {.role = GoodsRole::Wins, .kind = kind});
        }
    }
    add_list(goods, root, "measures", GoodsRole::Measure);
    add_list(goods, root, "sizes", GoodsRole::Size);
    return goods;
}

/// The shipped kind that a cook means by its key or its name in any language.
std::optional<std::size_t> kind_called(const Goods& goods, const std::string& name) {
    for (std::size_t i = 0; i < goods.kinds.size(); ++i) {
        const auto& key = goods.kinds[i].key;
        const bool by_name = std::ranges::any_of(shipped_languages(), [&](const auto& language) {
            return !key.empty() &&
                   key_of_text(shipped_language(language).say("goods." + key)) == key_of_text(name);
        });
        if (lower(name) == key || by_name) {
            return i;
        }
    }
    return std::nullopt;
}

/// Has the kinds of `order` stand first; what is left follows as it was.
void put_in_order(Goods& goods, std::vector<std::size_t> order) {
    for (std::size_t i = 0; i < goods.kinds.size(); ++i) {
        if (std::ranges::find(order, i) == order.end()) {
            order.push_back(i);
        }
    }
    std::vector<GoodsKind> kinds;
    std::vector<std::size_t> place(order.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        kinds.push_back(goods.kinds[order[i]]);
        place[order[i]] = i;
    }
    goods.kinds = std::move(kinds);
    for (auto& [key, words] : goods.words) {
        for (auto& word : words) {
            word.kind = place[word.kind];
        }
    }
}

Goods read_own(toml::Table& root) {
    auto goods = shipped_goods();
    std::vector<std::size_t> order;
    for (auto& table : root.tables("kind", most_kinds)) {
        const toml::Key name_key{"name", "\"farm shop\""};
        table.require(name_key);
        const auto name = table.line(name_key, most_characters).value_or("");
        auto kind = kind_called(goods, name);
        if (!kind) {
            kind = goods.kinds.size();
            goods.kinds.push_back({"", name});
        }
        for (const auto& word :
             table.lines({"goods", "[\"onion\"]"}, most_words, most_characters)) {
            const bool is_bought = goods.kinds[*kind].key != "not-bought";
            add_word(goods, word,
                     {.role = is_bought ? GoodsRole::Thing : GoodsRole::Whole, .kind = *kind});
        }
        table.refuse_unknown();
        order.push_back(*kind);
    }
    root.refuse_unknown();
    put_in_order(goods, std::move(order));
    return goods;
}

/// Without the accent that Spanish drops in the plural: "limón" → "limones".
std::string without_last_accent(std::string word) {
    for (const auto& [accented, plain] :
         {std::pair{"ón", "on"}, std::pair{"án", "an"}, std::pair{"ín", "in"}}) {
        if (word.ends_with(accented)) {
            word.replace(word.size() - std::string_view{accented}.size(), std::string::npos, plain);
        }
    }
    return word;
}

std::string english_plural(const std::string& word) {
    const auto ends = [&word](std::string_view ending) { return word.ends_with(ending); };
    const bool hisses = ends("s") || ends("x") || ends("ch") || ends("sh");
    const bool vowel_y = ends("ay") || ends("ey") || ends("oy") || ends("uy");
    if (ends("y") && !vowel_y) {
        return word.substr(0, word.size() - 1) + "ies";
    }
    return word + (hisses ? "es" : "s");
}

/// Of a phrase what it is stands first: "diente de ajo", "hoja de laurel".
std::string spanish_plural(const std::string& word) {
    const auto end = word.find(' ');
    const auto noun = word.substr(0, end);
    const auto rest = end == std::string::npos ? "" : word.substr(end);
    if (noun.ends_with('z')) {
        return noun.substr(0, noun.size() - 1) + "ces" + rest;
    }
    const bool by_vowel =
        !noun.empty() && std::string_view{"aeiou"}.find(noun.back()) != std::string_view::npos;
    const bool by_accent = noun.ends_with("é") || noun.ends_with("á") || noun.ends_with("ó");
    return (by_vowel || by_accent ? noun + "s" : without_last_accent(noun) + "es") + rest;
}

} // namespace

std::string goods_key(std::span<const std::string> words) {
    return joined(words, " ", kitchen::food_stem);
}

std::string plural_by_rule(const std::string& word, std::string_view language) {
    if (language == "en") {
        return english_plural(word);
    }
    return language == "es" ? spanish_plural(word) : word;
}

void add_word(Goods& goods, const std::string& written, GoodsWord word) {
    const auto slash = written.find('/');
    word.one = written.substr(0, slash);
    word.several = slash == std::string::npos ? plural_by_rule(word.one, word.language)
                                              : written.substr(slash + 1);
    add_under(goods, key_of_text(word.one), word);
    add_under(goods, key_of_text(word.several), word);
}

const Goods& shipped_goods() {
    static const Goods goods = [] {
        Diagnostics faults;
        const auto document = toml::parse(std::string{goods_words}, "goods.toml", faults);
        toml::Reader reader{document, faults};
        auto root = reader.root();
        auto read = read_shipped(root);
        assert(!has_errors(faults) && "the shipped table is well");
        return read;
    }();
    return goods;
}

Result<Goods, Diagnostics> own_goods(std::string_view text, std::string_view file) {
    Diagnostics faults;
    const auto document = toml::parse(std::string{text}, std::string{file}, faults);
    toml::Reader reader{document, faults};
    auto root = reader.root();
    auto goods = document.well_formed() ? read_own(root) : Goods{};
    reader.finish();
    if (has_errors(faults)) {
        return Failure{std::move(faults)};
    }
    return goods;
}

} // namespace thawslip::wording
