// Stands in for libFuzzer where the compiler has none: every file named, or every file of a folder
// named, is tried once.

#include "fuzz/target.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> files_of(const fs::path& named) {
    std::vector<fs::path> files;
    if (!fs::is_directory(named)) {
        return {named};
    }
    for (const auto& entry : fs::directory_iterator{named}) {
        if (entry.is_regular_file()) {
            files.push_back(entry.path());
        }
    }
    std::ranges::sort(files);
    return files;
}

bool try_file(const fs::path& path) {
    std::ifstream file{path, std::ios::binary};
    const std::string bytes{std::istreambuf_iterator<char>{file}, {}};
    std::cout << path.string() << std::endl; // the last one told is the one that failed
    LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
    return file.is_open();
}

} // namespace

int main(int argc, char** argv) {
    std::size_t tried = 0;
    for (int i = 1; i < argc; ++i) {
        for (const auto& path : files_of(argv[i])) {
            tried += try_file(path) ? 1U : 0U;
        }
    }
    std::cout << tried << " inputs\n";
    return tried > 0 ? 0 : 1;
}
