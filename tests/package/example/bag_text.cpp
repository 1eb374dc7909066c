// What the codes of a day's labels say, read back as a scanner types them.
//     bag_text DAY.toml
#include "day_text.h"

#include <iostream>
#include <thawslip/bag.h>
#include <thawslip/sheets.h>

int main(int argc, char** argv) {
    if (argc != 2) {
        return 2;
    }
    const auto kitchen = thawslip::open_kitchen(DATA_FOLDER);
    const auto texts = thawslip::code_texts(*kitchen.value, {day_of(argv[1])});
    show(texts.messages);
    for (const auto& text : texts.value.value_or(std::vector<std::string>{})) {
        const auto bag = thawslip::read_code_text(text);
        std::cout << bag.value->id << " " << bag.value->dish << "\n";
    }
    return texts ? 0 : 1;
}
