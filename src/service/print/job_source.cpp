#include "code/message.h"
#include "service/print/job.h"
#include "wording/bilingual.h"
#include "wording/prints.h"

#include <algorithm>

namespace thawslip::service {
namespace {

bool is_list(const PrintOf& of) {
    return of.kind == wording::Kind::DoorList || of.kind == wording::Kind::DaySheet ||
           of.kind == wording::Kind::PlanSheet;
}

/// \pre !is_list(of)
wording::Print words_of(const PrintOf& of, const Days& days, const wording::Style& style) {
    const auto& plan = days.plans[of.day];
    const auto& planned = plan.packages[of.package];
    switch (of.kind) {
    case wording::Kind::BagLabel: return bag_label(plan, planned, planned.bags[of.bag], style);
    case wording::Kind::FinishingCard:
        return finishing_card(plan, planned, planned.bags[of.bag], style);
    case wording::Kind::CookDayCard: return cook_day_card(plan, planned, style);
    case wording::Kind::DoorList:
    case wording::Kind::DaySheet:
    case wording::Kind::PlanSheet: break;
    }
    return {};
}

/// Cards speak both languages; labels, which have no room for them, the first alone.
bool is_bilingual(const PrintOf& of, const std::optional<wording::Style>& second) {
    return second && of.kind != wording::Kind::BagLabel;
}

/// How many prints of the job from `i` on are of the bags of one dish: of one kind and one package.
std::size_t bags_of_dish(const Job& job, std::size_t i) {
    const auto& of = job.prints[i];
    const auto end = std::find_if(job.prints.begin() + static_cast<std::ptrdiff_t>(i),
                                  job.prints.end(), [&of](const PrintOf& other) {
                                      return other.kind != of.kind || other.day != of.day ||
                                             other.package != of.package;
                                  });
    return static_cast<std::size_t>(end - job.prints.begin()) - i;
}

/// What the prints of a dish's bags do not share, in one language or in two.
wording::Print bag_words_of(const kitchen::Bag& bag, const PrintOf& of, const wording::Style& first,
                            const std::optional<wording::Style>& second) {
    wording::Print own;
    own.fields = bag_fields(bag, first);
    if (!is_bilingual(of, second)) {
        return own;
    }
    wording::Print other;
    other.fields = bag_fields(bag, *second);
    return wording::bilingual(std::move(own), other);
}

} // namespace

const kitchen::PlannedPackage& package_of(const PrintOf& of, const Days& days) {
    return days.plans[of.day].packages[of.package];
}

const std::string& dish_name_of(const PrintOf& of, const Job& job, const Days& days) {
    return is_list(of) ? job.lists[of.package].dish : package_of(of, days).package.dish;
}

layout::Source source_of(const Job& job, const Days& days, const Settings& settings) {
    layout::Source source;
    source.count = job.prints.size();
    source.print = [&job, &days, style = style_of(settings),
                    second = second_style_of(settings)](std::size_t i) {
        const auto& of = job.prints[i];
        if (is_list(of)) {
            return job.lists[of.package];
        }
        auto print = words_of(of, days, style);
        return is_bilingual(of, second)
                   ? wording::bilingual(std::move(print), words_of(of, days, *second))
                   : print;
    };
    source.code_texts = [&job, &days](std::size_t i) {
        const auto& planned = package_of(job.prints[i], days);
        return code::texts(code::message_for(planned, planned.bags[job.prints[i].bag]));
    };
    source.alike = [&job](std::size_t i) { return bags_of_dish(job, i); };
    source.own_fields = [&job, &days, style = style_of(settings),
                         second = second_style_of(settings)](std::size_t i) {
        const auto& of = job.prints[i];
        const bool of_bag =
            of.kind == wording::Kind::BagLabel || of.kind == wording::Kind::FinishingCard;
        return of_bag ? bag_words_of(package_of(of, days).bags[of.bag], of, style, second).fields
                      : std::vector<wording::Field>{};
    };
    return source;
}

} // namespace thawslip::service
