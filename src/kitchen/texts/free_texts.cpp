#include "kitchen/texts/free_texts.h"

#include "kitchen/texts/sentences.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

class Texts {
public:
    explicit Texts(Wanted wanted) : wanted_{wanted} {}

    void add(FreeText field, std::string written, KeyPath where) {
        if (!written.empty() && (wanted_ == nullptr || wanted_(field))) {
            auto text = worded(written);
            auto parts = names_food(field) ? std::vector<WordedText>{} : sentences(written);
            list_.push_back(
                {field, std::move(written), std::move(text), std::move(where), std::move(parts)});
        }
    }
    std::vector<ReadText> in_order() && {
        std::ranges::stable_sort(list_, {}, &ReadText::field);
        return std::move(list_);
    }

private:
    Wanted wanted_;
    std::vector<ReadText> list_;
};

void add_cooking(Texts& texts, const Cook& cook) {
    texts.add(FreeText::CookIn, cook.in, cook.where.key("in"));
    texts.add(FreeText::CookSetting, cook.setting, cook.where.key("setting"));
    for (std::size_t i = 0; i < cook.steps.size(); ++i) {
        texts.add(FreeText::Step, cook.steps[i], cook.where.key("steps").index(i));
    }
}

/// What is cooked beside the bag is added on cook day; what it is cooked in says nothing of the
/// bag.
void add_side(Texts& texts, const Side& side) {
    texts.add(FreeText::Finish, text_of(side.add), side.where.key("add"));
    for (std::size_t i = 0; i < side.steps.size(); ++i) {
        texts.add(FreeText::Step, side.steps[i], side.where.key("steps").index(i));
    }
}

} // namespace

std::vector<ReadText> free_texts(const Package& package, Wanted wanted) {
    Texts texts{wanted};
    texts.add(FreeText::Dish, package.dish, package.where.key("dish"));
    texts.add(FreeText::Note, package.note, package.where.key("note"));
    texts.add(FreeText::ThawNote, package.thaw.note, package.thaw.where.key("note"));
    for (const auto& ingredient : package.ingredients) {
        texts.add(ingredient.day == IngredientDay::CookDay ? FreeText::CookDayIngredient
                                                           : FreeText::Ingredient,
                  text_of(ingredient.add), ingredient.where.key("add"));
    }
    for (const auto& finish : package.finish) {
        texts.add(FreeText::Finish, text_of(finish.add), finish.where.key("add"));
        texts.add(FreeText::FinishBag, finish.bag, finish.where.key("bag"));
    }
    if (package.cook) {
        add_cooking(texts, *package.cook);
    }
    for (const auto& side : package.sides) {
        add_side(texts, side);
    }
    return std::move(texts).in_order();
}

bool names_food(FreeText field) {
    return field <= FreeText::Finish;
}

} // namespace thawslip::kitchen
