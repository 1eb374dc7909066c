#include "service/day/day_summary.h"

#include "toml/document.h"

#include <algorithm>

namespace thawslip::service {
namespace {

template <class T>
const T* content_of(const toml::Value& table, std::string_view key) {
    const auto* found = toml::member(table, key);
    return found == nullptr ? nullptr : std::get_if<T>(&found->content);
}

/// How many bags a package or one of its sizes has: 1 where it does not say.
int bags_of(const toml::Value& table) {
    constexpr std::int64_t most = 10'000; // what stands there is not judged here
    const auto* bags = content_of<std::int64_t>(table, "bags");
    return static_cast<int>(bags == nullptr ? 1 : std::clamp(*bags, std::int64_t{0}, most));
}

int bags_of_package(const toml::Value& package) {
    const auto* sizes = content_of<toml::Array>(package, "size");
    if (sizes == nullptr) {
        return bags_of(package);
    }
    int bags = 0;
    for (const auto& size : sizes->elements) {
        bags += bags_of(size);
    }
    return bags;
}

} // namespace

DaySummary summary_of(const std::string& text) {
    DaySummary summary;
    Diagnostics faults;
    const auto document = toml::parse(text, "", faults);
    const auto& root = document.root();
    summary.is_readable = document.has_values();
    summary.is_day = !summary.is_readable || toml::member(root, "day") != nullptr ||
                     toml::member(root, "package") != nullptr;
    if (const auto* day = toml::member(root, "day")) {
        if (const auto* made = content_of<toml::Date>(*day, "made")) {
            summary.made = *made;
        }
    }
    if (const auto* packages = content_of<toml::Array>(root, "package")) {
        for (const auto& package : packages->elements) {
            if (const auto* dish = content_of<std::string>(package, "dish")) {
                summary.dishes.push_back(*dish);
            }
            summary.bags += bags_of_package(package);
        }
    }
    return summary;
}

} // namespace thawslip::service
