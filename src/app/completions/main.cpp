// Writes the completion files when Thawslip is built:  thawslip_completions FOLDER
#include "app/command_line/command_line.h"
#include "app/completions/completion.h"
#include "app/files/whole_file.h"

#include <exception>
#include <iostream>

int main(int argc, char** argv) {
    namespace completions = thawslip::app::completions;
    if (argc != 2) {
        std::cerr << "usage: thawslip_completions FOLDER\n";
        return 2;
    }
    try {
        const std::string folder = argv[1];
        const auto program = thawslip::app::program_description();
        thawslip::app::write_whole_file(folder + "/thawslip", completions::bash(program));
        thawslip::app::write_whole_file(folder + "/_thawslip", completions::zsh(program));
        thawslip::app::write_whole_file(folder + "/thawslip.fish", completions::fish(program));
        return 0;
    } catch (const std::exception& failure) {
        std::cerr << "error: " << failure.what() << "\n";
        return 3;
    }
}
