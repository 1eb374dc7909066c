// From a day's description to a PDF of labels.
//     count_labels DAY.toml labels.pdf
#include <fstream>
#include <iostream>
#include <sstream>
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
    if (argc != 3) {
        return 2;
    }
    const auto kitchen = thawslip::open_kitchen(DATA_FOLDER);
    const auto labels = thawslip::draw(*kitchen.value, {day_of(argv[1])}, thawslip::Print::Labels);
    tell(labels.messages);
    if (!labels) {
        return 1;
    }
    std::ofstream{argv[2], std::ios::binary} << labels.value->files.front();
    std::cout << labels.value->prints << " labels on " << labels.value->sheets << " pages\n";
}
