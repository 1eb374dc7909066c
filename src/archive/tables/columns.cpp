#include "archive/tables/columns.h"

#include "base/split.h"

#include <algorithm>

namespace thawslip::archive {
namespace {

PackageRecord without_ids(PackageRecord package) {
    for (auto& id : package.bags) {
        id.clear();
    }
    package.batch = {};
    package.origin.clear();
    return package;
}

} // namespace

std::string lines_of(const std::vector<std::string>& entries) {
    std::string lines;
    for (const auto& entry : entries) {
        lines += entry + "\n";
    }
    return lines;
}

kitchen::Date date_of(const std::string& iso) {
    return kitchen::parse_iso(iso).value_or(kitchen::Date{});
}

PackageRecord package_at(const Statement& row, int first) {
    PackageRecord package;
    package.dish = row.text(first);
    package.words = row.text(first + 1);
    package.made = date_of(row.text(first + 2));
    package.keep_until = date_of(row.text(first + 3));
    package.basis = basis_of(row.text(first + 4)).value_or(kitchen::DateBasis::StorageTable);
    package.servings = static_cast<int>(row.integer(first + 5));
    if (!row.is_nothing(first + 6)) {
        package.weight = kitchen::Mass{row.real(first + 6)};
    }
    if (!row.is_nothing(first + 7)) {
        package.food = FoodRecord{lines_in(row.text(first + 7)), lines_in(row.text(first + 8))};
    }
    if (const auto method = thaw_method_of(row.text(first + 9))) {
        package.thaw = ThawRecord{*method, std::nullopt};
        if (!row.is_nothing(first + 10)) {
            package.thaw->lead = std::chrono::minutes{row.integer(first + 10)};
        }
    }
    package.place = row.text(first + 11);
    return package;
}

Statement& with_optional(Statement& statement, const PackageRecord& package) {
    package.weight ? statement.with(package.weight->grams) : statement.with_nothing();
    if (package.food) {
        statement.with(lines_of(package.food->allergens)).with(lines_of(package.food->classes));
    } else {
        statement.with_nothing().with_nothing();
    }
    package.thaw ? statement.with(word_of(package.thaw->method)) : statement.with_nothing();
    const bool timed = package.thaw && package.thaw->lead;
    timed ? statement.with(std::int64_t{package.thaw->lead->count()}) : statement.with_nothing();
    return statement.with(package.place);
}

kitchen::Batch batch_at(const Statement& row, int first) {
    return {static_cast<int>(row.integer(first)), row.text(first + 1), row.integer(first + 2),
            static_cast<int>(row.integer(first + 3))};
}

bool same_package(const PackageRecord& one, const PackageRecord& other) {
    auto a = without_ids(one);
    const auto b = without_ids(other);
    if (!a.food || !b.food) { // schema 1 kept neither
        a.food = b.food;
        a.thaw = b.thaw;
    }
    return a == b;
}

bool same_packages(const std::vector<PackageRecord>& some,
                   const std::vector<PackageRecord>& others) {
    return std::ranges::equal(some, others, same_package);
}

bool same_food(const PackageRecord& one, const PackageRecord& other) {
    const auto grams = [](const PackageRecord& package) {
        return package.weight ? package.weight->grams : 0.0;
    };
    return one.dish == other.dish && one.made == other.made && one.food && one.food == other.food &&
           one.servings == other.servings && grams(one) == grams(other);
}

} // namespace thawslip::archive
