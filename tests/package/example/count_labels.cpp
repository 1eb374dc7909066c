// From a day's description to a PDF of labels.
//     count_labels DAY.toml labels.pdf
#include "day_text.h"

#include <fstream>
#include <iostream>
#include <thawslip/sheets.h>

int main(int argc, char** argv) {
    if (argc != 3) {
        return 2;
    }
    const auto kitchen = thawslip::open_kitchen(DATA_FOLDER);
    const auto labels = thawslip::draw(*kitchen.value, {day_of(argv[1])}, thawslip::Print::Labels);
    show(labels.messages);
    if (!labels) {
        return 1;
    }
    std::ofstream{argv[2], std::ios::binary} << labels.value->files.front();
    std::cout << labels.value->prints << " labels on " << labels.value->sheets << " pages\n";
}
