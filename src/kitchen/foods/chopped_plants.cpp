#include "kitchen/foods/chopped_plants.h"

#include <algorithm>
#include <string_view>

namespace thawslip::kitchen {
namespace {

/// Beginnings of words in English, Spanish and German; endings do not matter.
constexpr std::string_view beginnings[] = {
    // herbs
    "herb", "parsley", "coriander", "cilantro", "dill", "chive", "basil", "thyme", "sage", "mint",
    "oregano", "rosemar", "tarragon", "marjoram", "chervil", "hierba", "perejil", "eneldo",
    "cebollin", "albahaca", "tomillo", "salvia", "menta", "romero", "estragon", "mejorana",
    "epazote", "krauter", "petersilie", "koriander", "schnittlauch", "basilikum", "thymian",
    "salbei", "minze", "majoran", "kerbel", "liebstockel",
    // spices
    "cumin", "cinnamon", "nutmeg", "clove", "cardamom", "turmeric", "paprika", "allspice", "ginger",
    "pepper", "chilli", "chili", "chile", "mace", "caraway", "comino", "canela", "clavo",
    "cardamomo", "curcuma", "pimenton", "pimienta", "jengibre", "kummel", "kreuzkummel", "zimt",
    "muskat", "nelke", "kardamom", "kurkuma", "piment", "ingwer", "pfeffer",
    // nuts and seeds
    "almond", "walnut", "hazelnut", "pecan", "cashew", "pistachio", "peanut", "chestnut", "sesame",
    "linseed", "flax", "poppy", "coffee", "almendra", "nuez", "nueces", "avellana", "cacahuate",
    "cacahuete", "mani", "pistacho", "pistache", "pinon", "cafe", "mandel", "walnuss", "haselnuss",
    "nusse", "pistazie", "erdnuss", "kaffee", "mohn", "leinsamen",
    // vegetables and fruit
    "garlic", "onion", "shallot", "tomato", "carrot", "celery", "ajo", "cebolla", "chalota",
    "tomate", "jitomate", "zanahoria", "apio", "knoblauch", "zwiebel", "schalotte", "mohre",
    "karotte", "sellerie", "chocolate", "schokolade"};

} // namespace

bool names_chopped_plant(std::span<const std::string> words) {
    return std::ranges::any_of(words, [](std::string_view word) {
        return std::ranges::any_of(beginnings,
                                   [&](std::string_view one) { return word.starts_with(one); });
    });
}

} // namespace thawslip::kitchen
