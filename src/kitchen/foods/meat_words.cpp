#include "kitchen/foods/meat_words.h"

#include "kitchen/day.h"
#include "kitchen/texts/phrases.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <array>

namespace thawslip::kitchen {
namespace {

enum class Meat { None, Poultry, Pork, BeefOrLamb, Game, Some };

struct Name {
    std::string_view phrase;
    Meat meat;
};

/// Whole words, English then Spanish then German; common practice, no source. Longer phrases of
/// `None` keep a shorter one from being seen in them.
constexpr auto names = std::to_array<Name>({
    {"chicken", Meat::Poultry},
    {"hen", Meat::Poultry},
    {"turkey", Meat::Poultry},
    {"duck", Meat::Poultry},
    {"duckling", Meat::Poultry},
    {"goose", Meat::Poultry},
    {"geese", Meat::Poultry},
    {"poultry", Meat::Poultry},
    {"quail", Meat::Poultry},
    {"pigeon", Meat::Poultry},
    {"squab", Meat::Poultry},
    {"guinea fowl", Meat::Poultry},
    {"fowl", Meat::Poultry},
    {"pheasant", Meat::Poultry},
    {"partridge", Meat::Poultry},
    {"grouse", Meat::Poultry},
    {"capon", Meat::Poultry},
    {"poussin", Meat::Poultry},
    {"cockerel", Meat::Poultry},
    {"ostrich", Meat::Poultry},
    {"game bird", Meat::Poultry},
    {"drumstick", Meat::Poultry},
    {"pork", Meat::Pork},
    {"ham", Meat::Pork},
    {"gammon", Meat::Pork},
    {"bacon", Meat::Pork},
    {"suckling pig", Meat::Pork},
    {"spare rib", Meat::Pork},
    {"sparerib", Meat::Pork},
    {"beef", Meat::BeefOrLamb},
    {"veal", Meat::BeefOrLamb},
    {"lamb", Meat::BeefOrLamb},
    {"mutton", Meat::BeefOrLamb},
    {"sirloin", Meat::BeefOrLamb},
    {"rump steak", Meat::BeefOrLamb},
    {"ribeye", Meat::BeefOrLamb},
    {"rib eye", Meat::BeefOrLamb},
    {"brisket", Meat::BeefOrLamb},
    {"goat", Meat::BeefOrLamb},
    {"venison", Meat::Game},
    {"deer", Meat::Game},
    {"elk", Meat::Game},
    {"moose", Meat::Game},
    {"caribou", Meat::Game},
    {"reindeer", Meat::Game},
    {"boar", Meat::Game},
    {"hare", Meat::Game},
    {"rabbit", Meat::Game},
    {"bison", Meat::Game},
    {"antelope", Meat::Game},
    {"kangaroo", Meat::Game},
    {"bear meat", Meat::Game},
    {"pollo", Meat::Poultry},
    {"gallina", Meat::Poultry},
    {"pavo", Meat::Poultry},
    {"pato", Meat::Poultry},
    {"ganso", Meat::Poultry},
    {"oca", Meat::Poultry},
    {"codorniz", Meat::Poultry},
    {"codornices", Meat::Poultry},
    {"faisan", Meat::Poultry},
    {"perdiz", Meat::Poultry},
    {"perdices", Meat::Poultry},
    {"capon", Meat::Poultry},
    {"pichon", Meat::Poultry},
    {"pichones", Meat::Poultry},
    {"avestruz", Meat::Poultry},
    {"aves de corral", Meat::Poultry},
    {"cerdo", Meat::Pork},
    {"jamon", Meat::Pork},
    {"panceta", Meat::Pork},
    {"cochinillo", Meat::Pork},
    {"lechon", Meat::Pork},
    {"tocino", Meat::Pork},
    {"ternera", Meat::BeefOrLamb},
    {"vacuno", Meat::BeefOrLamb},
    {"buey", Meat::BeefOrLamb},
    {"carne de res", Meat::BeefOrLamb},
    {"cordero", Meat::BeefOrLamb},
    {"cabrito", Meat::BeefOrLamb},
    {"venado", Meat::Game},
    {"ciervo", Meat::Game},
    {"corzo", Meat::Game},
    {"jabali", Meat::Game},
    {"liebre", Meat::Game},
    {"conejo", Meat::Game},
    {"bisonte", Meat::Game},
    {"huhn", Meat::Poultry},
    {"henne", Meat::Poultry},
    {"pute", Meat::Poultry},
    {"ente", Meat::Poultry},
    {"gans", Meat::Poultry},
    {"wachtel", Meat::Poultry},
    {"taube", Meat::Poultry},
    {"fasan", Meat::Poultry},
    {"rebhuhn", Meat::Poultry},
    {"poularde", Meat::Poultry},
    {"strauss", Meat::Poultry},
    {"schwein", Meat::Pork},
    {"speck", Meat::Pork},
    {"schinken", Meat::Pork},
    {"kassler", Meat::Pork},
    {"rind", Meat::BeefOrLamb},
    {"kalb", Meat::BeefOrLamb},
    {"lamm", Meat::BeefOrLamb},
    {"hammel", Meat::BeefOrLamb},
    {"reh", Meat::Game},
    {"hase", Meat::Game},
    {"elch", Meat::Game},
    {"wildbret", Meat::Game},
    {"kaninchen", Meat::Game},
    {"wild", Meat::None}, // wild mushrooms, wild rice
    {"meat", Meat::Some},
    {"mince", Meat::Some},
    {"ground meat", Meat::Some},
    {"minced meat", Meat::Some},
    {"chop", Meat::Some},
    {"steak", Meat::Some},
    {"sausage", Meat::Some},
    {"roast", Meat::Some},
    {"joint of meat", Meat::Some},
    {"meatball", Meat::Some},
    {"burger", Meat::Some},
    {"hamburger", Meat::Some},
    {"patty", Meat::Some},
    {"rib", Meat::Some},
    {"carne", Meat::Some},
    {"carne picada", Meat::Some},
    {"chuleta", Meat::Some},
    {"salchicha", Meat::Some},
    {"albondiga", Meat::Some},
    {"hamburguesa", Meat::Some},
    {"bistec", Meat::Some},
    {"costilla", Meat::Some},
    {"fleisch", Meat::Some},
    {"hackfleisch", Meat::Some},
    {"hack", Meat::Some},
    {"mett", Meat::Some},
    {"kotelett", Meat::Some},
    {"wurst", Meat::Some},
    {"bratwurst", Meat::Some},
    {"frikadelle", Meat::Some},
    {"bulette", Meat::Some},
    {"gulasch", Meat::Some},
    {"braten", Meat::Some},
    {"schnitzel", Meat::Some},
    {"nut meat", Meat::None},
    {"coconut meat", Meat::None},
    {"chicken stock", Meat::None},
    {"chicken broth", Meat::None},
    {"chicken bouillon", Meat::None},
    {"chicken of the woods", Meat::None},
    {"hen of the wood", Meat::None},
    {"turkey stock", Meat::None},
    {"turkey broth", Meat::None},
    {"poultry stock", Meat::None},
    {"poultry seasoning", Meat::None},
    {"duck stock", Meat::None},
    {"duck egg", Meat::None},
    {"duck fat", Meat::None},
    {"goose fat", Meat::None},
    {"hen egg", Meat::None},
    {"quail egg", Meat::None},
    {"beef stock", Meat::None},
    {"beef broth", Meat::None},
    {"beef bouillon", Meat::None},
    {"beef tomato", Meat::None},
    {"beef tomatoes", Meat::None},
    {"beef dripping", Meat::None},
    {"lamb lettuce", Meat::None},
    {"lamb stock", Meat::None},
    {"veal stock", Meat::None},
    {"goat cheese", Meat::None},
    {"goat milk", Meat::None},
    {"caldo de pollo", Meat::None},
    {"caldo de gallina", Meat::None},
    {"fondo de ave", Meat::None},
    {"caldo de ternera", Meat::None},
    {"huevos de codorniz", Meat::None},
    {"grasa de pato", Meat::None},
});

/// German writes one word: Putenwurst, Brathähnchen. A word that begins or ends so is that meat…
struct Stem {
    std::string_view letters;
    Meat meat;
};
constexpr auto beginnings = std::to_array<Stem>({
    {"hahnchen", Meat::Poultry}, {"huhner", Meat::Poultry},
    {"huhnchen", Meat::Poultry}, {"puten", Meat::Poultry},
    {"truthahn", Meat::Poultry}, {"geflugel", Meat::Poultry},
    {"enten", Meat::Poultry},    {"ganse", Meat::Poultry},
    {"wachtel", Meat::Poultry},  {"fasan", Meat::Poultry},
    {"perlhuhn", Meat::Poultry}, {"schweine", Meat::Pork},
    {"schweins", Meat::Pork},    {"rinder", Meat::BeefOrLamb},
    {"rinds", Meat::BeefOrLamb}, {"rindfleisch", Meat::BeefOrLamb},
    {"kalbs", Meat::BeefOrLamb}, {"kalbfleisch", Meat::BeefOrLamb},
    {"lamm", Meat::BeefOrLamb},  {"hammel", Meat::BeefOrLamb},
    {"hirsch", Meat::Game},      {"wildschwein", Meat::Game},
    {"wildfleisch", Meat::Game}, {"wildgulasch", Meat::Game},
    {"wildragout", Meat::Game},  {"wildhack", Meat::Game},
    {"wildwurst", Meat::Game},   {"rehrucken", Meat::Game},
    {"rehkeule", Meat::Game},    {"rehfleisch", Meat::Game},
    {"rehragout", Meat::Game},   {"rehgulasch", Meat::Game},
    {"hasen", Meat::Game},       {"kaninchen", Meat::Game},
    {"elch", Meat::Game},
});
constexpr auto endings = std::to_array<Stem>({
    {"hahnchen", Meat::Poultry},
    {"huhn", Meat::Poultry},
    {"geflugel", Meat::Poultry},
    {"schweinefleisch", Meat::Pork},
    {"rindfleisch", Meat::BeefOrLamb},
    {"fleisch", Meat::Some},
    {"hack", Meat::Some},
    {"wurst", Meat::Some},
    {"gulasch", Meat::Some},
    {"braten", Meat::Some},
});
/// …unless it ends like this: broth, fat, egg, nut, lettuce.
constexpr auto no_meat = std::to_array<std::string_view>(
    {"bruhe", "fond", "fett", "schmalz", "ei", "eier", "nuss", "nusse", "salat", "gewurz"});

Meat meat_of_stem(std::string_view word) {
    const auto ends_word = [&](std::string_view end) { return word.ends_with(end); };
    if (std::ranges::any_of(no_meat, ends_word)) {
        return Meat::None;
    }
    for (const auto& [letters, meat] : beginnings) {
        if (word.starts_with(letters)) {
            return meat;
        }
    }
    for (const auto& [letters, meat] : endings) {
        if (word.ends_with(letters)) {
            return meat;
        }
    }
    return Meat::None;
}

const PhraseBook& book() {
    static const auto made = [] {
        std::vector<std::string_view> phrases;
        for (const auto& name : names) {
            phrases.push_back(name.phrase);
        }
        return PhraseBook{phrases};
    }();
    return made;
}

void note(MeatsNamed& named, Meat meat) {
    named.poultry |= meat == Meat::Poultry;
    named.pork |= meat == Meat::Pork;
    named.beef_or_lamb |= meat == Meat::BeefOrLamb;
    named.game |= meat == Meat::Game;
    named.some |= meat == Meat::Some;
}

void note_text(MeatsNamed& named, const Quantity& quantity) {
    const auto found =
        meats_in(words_of(quantity.as_written.empty() ? quantity.item : quantity.as_written));
    named.poultry |= found.poultry;
    named.pork |= found.pork;
    named.beef_or_lamb |= found.beef_or_lamb;
    named.game |= found.game;
    named.some |= found.some;
}

} // namespace

MeatsNamed meats_in(const std::vector<std::string>& words) {
    MeatsNamed named;
    for (const auto& match : book().find(words)) {
        note(named, names.at(match.entries.front()).meat);
    }
    for (const auto& word : words) {
        note(named, meat_of_stem(word));
    }
    return named;
}

MeatsNamed meats_in(const Package& package) {
    auto named = meats_in(words_of(package.dish));
    for (const auto& ingredient : package.ingredients) {
        note_text(named, ingredient.add);
    }
    for (const auto& finish : package.finish) {
        note_text(named, finish.add);
    }
    return named;
}

} // namespace thawslip::kitchen
