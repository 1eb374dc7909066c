#pragma once

#include <fstream>
#include <iostream>
#include <sstream>
#include <string>
#include <thawslip/kitchen.h>
#include <vector>

/// The description of a day, from its file.
inline thawslip::DayText day_of(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream{file}.rdbuf();
    return {file, text.str()};
}

/// What there is to say, as a terminal shows it.
inline void show(const std::vector<thawslip::Message>& messages) {
    for (const auto& message : messages) {
        std::cerr << message.text;
    }
}
