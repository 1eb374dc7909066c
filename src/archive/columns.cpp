#include "archive/columns.h"

#include <algorithm>
#include <charconv>

namespace thawslip::archive {
namespace {

int number_in(std::string_view digits) {
    int number = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), number);
    return number;
}

PackageRecord without_ids(PackageRecord package) {
    for (auto& id : package.bags) {
        id.clear();
    }
    return package;
}

std::vector<std::string> entries_in(const std::string& lines) {
    std::vector<std::string> entries;
    std::size_t start = 0;
    for (auto end = lines.find('\n'); end != std::string::npos; end = lines.find('\n', start)) {
        entries.push_back(lines.substr(start, end - start));
        start = end + 1;
    }
    return entries;
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
    using namespace std::chrono;
    if (iso.size() != 10) {
        return {};
    }
    const std::string_view text = iso;
    return {year{number_in(text.substr(0, 4))},
            month{static_cast<unsigned>(number_in(text.substr(5, 2)))},
            day{static_cast<unsigned>(number_in(text.substr(8, 2)))}};
}

std::string_view word_of(kitchen::DateBasis basis) {
    return basis == kitchen::DateBasis::SetByCook ? "use by" : "best";
}

kitchen::DateBasis basis_of(std::string_view word) {
    return word == "use by" ? kitchen::DateBasis::SetByCook : kitchen::DateBasis::StorageTable;
}

PackageRecord package_at(const Statement& row, int first) {
    PackageRecord package;
    package.dish = row.text(first);
    package.words = row.text(first + 1);
    package.made = date_of(row.text(first + 2));
    package.keep_until = date_of(row.text(first + 3));
    package.basis = basis_of(row.text(first + 4));
    package.servings = static_cast<int>(row.integer(first + 5));
    if (!row.is_nothing(first + 6)) {
        package.weight = kitchen::Mass{row.real(first + 6)};
    }
    if (!row.is_nothing(first + 7)) {
        package.food = FoodRecord{entries_in(row.text(first + 7)), entries_in(row.text(first + 8))};
    }
    return package;
}

bool same_package(const PackageRecord& one, const PackageRecord& other) {
    auto a = without_ids(one);
    const auto b = without_ids(other);
    if (!a.food || !b.food) {
        a.food = b.food;
    }
    return a == b;
}

bool same_packages(const std::vector<PackageRecord>& some,
                   const std::vector<PackageRecord>& others) {
    return std::ranges::equal(some, others, same_package);
}

bool same_food(const PackageRecord& one, const PackageRecord& other) {
    return one.dish == other.dish && one.made == other.made && one.food && one.food == other.food;
}

} // namespace thawslip::archive
