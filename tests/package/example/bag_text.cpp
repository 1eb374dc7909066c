// What the codes of a day's labels say, read back as a scanner types them.
//     bag_text DAY.toml
#include <fstream>
#include <iostream>
#include <sstream>
#include <thawslip/bag.h>
#include <thawslip/sheets.h>

namespace {

thawslip::DayText day_of(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream{file}.rdbuf();
    return {file, text.str()};
}

void tell(const std::vector<thawslip::Message>& messages) {
    for (const auto& message : messages) {
        std::cerr << message.text;
    }
}

} // namespace

int main(int argc, char** argv) {
    if (argc != 2) {
        return 2;
    }
    const auto kitchen = thawslip::open_kitchen(DATA_FOLDER);
    const auto texts = thawslip::code_texts(*kitchen.value, {day_of(argv[1])});
    tell(texts.messages);
    for (const auto& text : texts.value.value_or(std::vector<std::string>{})) {
        const auto bag = thawslip::read_code_text(text);
        std::cout << bag.value->id << " " << bag.value->dish << "\n";
    }
    return texts ? 0 : 1;
}
