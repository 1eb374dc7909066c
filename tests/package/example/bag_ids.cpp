// The kitchen's arithmetic alone: no pages, no files, no fonts.
#include <iostream>
#include <thawslip/kitchen/bag_id.h>

int main() {
    using namespace thawslip::kitchen;
    const Date made{std::chrono::year{2026}, std::chrono::month{10}, std::chrono::day{17}};
    for (int bag = 1; bag <= 3; ++bag) {
        std::cout << bag_id({"Chestnut and kale soup", made, bag}) << "\n";
    }
}
