#include "app/make_prints.h"

#include "code/message.h"
#include "wording/bilingual.h"
#include "wording/prints.h"

#include <algorithm>

namespace thawslip::app {
namespace {

std::string title_of(const Days& days, std::string_view what) {
    std::string title{what};
    for (std::size_t i = 0; i < days.plans.size(); ++i) {
        title += (i == 0 ? " " : ", ") + kitchen::to_iso(days.plans[i].made);
    }
    return title;
}

void add(Job& job, std::size_t day, wording::Print print) {
    job.prints.push_back(std::move(print));
    job.days.push_back(day);
}

/// Cards for one package of one of the days.
struct CardMaker {
    const Days& days;
    CardKinds kinds;
    const wording::Style& style;
    const std::optional<wording::Style>& second; ///< below the first; nothing: one language
};

/// What `make` makes in the language that is set, or in both.
template <class Make>
wording::Print in_languages(const CardMaker& maker, const Make& make) {
    auto print = make(maker.style);
    return maker.second ? wording::bilingual(std::move(print), make(*maker.second)) : print;
}

void add_cards(Job& job, std::size_t day, const kitchen::PlannedPackage& planned,
               const CardMaker& maker) {
    const auto& plan = maker.days.plans[day];
    const auto kinds = maker.kinds;
    if (kinds != CardKinds::Finishing) {
        auto card = in_languages(maker, [&](const wording::Style& style) {
            return wording::cook_day_card(plan, planned, style);
        });
        if (!planned.bags.empty()) {
            card.code_texts = code::texts(code::message_for(planned, planned.bags.front()));
        }
        add(job, day, std::move(card));
    }
    if (kinds != CardKinds::CookDay && !planned.finish.empty()) {
        for (const auto& bag : planned.bags) {
            add(job, day, in_languages(maker, [&](const wording::Style& style) {
                    return wording::finishing_card(plan, planned, bag, style);
                }));
        }
    }
}

} // namespace

Job label_job(const Days& days, const Settings& settings) {
    Job job;
    job.title = title_of(days, "Bag labels");
    job.noun = "label";
    job.language = settings.language;
    job.recorded_as = "labels";
    job.default_stock = !settings.label_stock.empty() ? settings.label_stock
                        : settings.paper == "a4"      ? "a4-2x4-99x68mm"
                                                      : "letter-2x5-4x2in";
    const auto style = style_of(settings);
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        for (const auto& planned : days.plans[day].packages) {
            for (const auto& bag : planned.bags) {
                auto label = wording::bag_label(days.plans[day], planned, bag, style);
                label.code_texts = code::texts(code::message_for(planned, bag));
                add(job, day, std::move(label));
            }
        }
    }
    return job;
}

Job card_job(const Days& days, CardKinds kinds, const Settings& settings) {
    Job job;
    job.title = title_of(days, "Cook-day cards");
    job.noun = "card";
    job.language = settings.language;
    job.recorded_as = kinds == CardKinds::Finishing ? "finishing cards"
                      : kinds == CardKinds::CookDay ? "cook-day cards"
                                                    : "cards";
    job.default_stock = !settings.card_stock.empty() ? settings.card_stock
                        : settings.paper == "a4"     ? "a4-cards-a6-cut"
                                                     : "letter-cards-6x4in-cut";
    const auto style = style_of(settings);
    const auto second = second_style_of(settings);
    const CardMaker maker{days, kinds, style, second};
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        for (const auto& planned : days.plans[day].packages) {
            add_cards(job, day, planned, maker);
        }
    }
    return job;
}

} // namespace thawslip::app
