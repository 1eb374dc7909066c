# What every target is compiled with, and how a folder of src/ becomes a library.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
if(NOT CMAKE_BUILD_TYPE AND NOT CMAKE_CONFIGURATION_TYPES)
    set(CMAKE_BUILD_TYPE Release)
endif()

set(CMAKE_CXX_FLAGS_RELEASE "-O2 -DNDEBUG") # Debian's own level

# GCC 12.2 -O1 and up takes stores into a struct that was passed by value for dead, by its analysis
# of what a function reads and writes: masks of codes over version 27 were weighed wrongly. Right
# without that analysis, at -O0 and by clang; a test holds the masks to another encoder.
add_compile_options($<$<CXX_COMPILER_ID:GNU>:-fno-ipa-modref>)

include(GNUInstallDirs)
find_package(PkgConfig REQUIRED)
find_package(fmt REQUIRED)
find_package(Threads REQUIRED)

add_library(thawslip_warnings INTERFACE)
target_compile_options(thawslip_warnings INTERFACE
    -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wold-style-cast
    -Wnon-virtual-dtor -Woverloaded-virtual -Wswitch-enum
    # GCC 12 warns of std::string's own code when it optimises (GCC bugs 105329, 105562 and 105651,
    # mended in 13); the sanitizers look after what these warnings would.
    "$<$<AND:$<CXX_COMPILER_ID:GNU>,$<VERSION_LESS:$<CXX_COMPILER_VERSION>,13>>:-Wno-restrict;-Wno-maybe-uninitialized;-Wno-array-bounds;-Wno-stringop-overflow;-Wno-stringop-overread>"
    $<$<BOOL:${THAWSLIP_WERROR}>:-Werror>)

if(THAWSLIP_SANITIZE)
    add_compile_options(-fsanitize=address,undefined -fno-sanitize-recover=undefined
                        -fno-omit-frame-pointer)
    add_link_options(-fsanitize=address,undefined)
endif()

# Every layer tells libFuzzer where an input leads, and is watched by the sanitizers.
if(THAWSLIP_FUZZ)
    if(NOT CMAKE_CXX_COMPILER_ID STREQUAL "Clang")
        message(FATAL_ERROR "THAWSLIP_FUZZ needs clang: cmake --preset fuzz")
    endif()
    add_compile_options(-fsanitize=fuzzer-no-link,address,undefined
                        -fno-sanitize-recover=undefined -fno-omit-frame-pointer)
    add_link_options(-fsanitize=address,undefined)
endif()

# What nearly every file includes, read once: half of the time that compiling took was spent on these.
# A file still includes all that it uses: the sanitize preset builds without this, and says what is missing.
add_library(thawslip_precompiled OBJECT "${CMAKE_CURRENT_LIST_DIR}/precompiled.cpp")
target_link_libraries(thawslip_precompiled PRIVATE fmt::fmt thawslip_warnings)
target_precompile_headers(thawslip_precompiled PRIVATE
    <algorithm> <array> <chrono> <cmath> <filesystem> <fstream> <functional> <map> <memory> <optional>
    <set> <span> <string> <string_view> <variant> <vector> <fmt/format.h>)

# thawslip_layer(<name> SOURCES <file>... [USES <layer>...] [LIBRARIES <third-party target>...])
# One folder of src/ as one static library. What a layer includes from a third party is private
# to it: no other folder sees those headers.
function(thawslip_layer name)
    cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "SOURCES;USES;LIBRARIES")
    add_library(thawslip_${name} STATIC ${arg_SOURCES})
    add_library(thawslip::${name} ALIAS thawslip_${name})
    set_target_properties(thawslip_${name} PROPERTIES EXPORT_NAME ${name})
    target_compile_features(thawslip_${name} PUBLIC cxx_std_20)
    target_include_directories(thawslip_${name} PUBLIC
        "$<BUILD_INTERFACE:${PROJECT_SOURCE_DIR}/src>"
        "$<INSTALL_INTERFACE:${CMAKE_INSTALL_INCLUDEDIR}>")
    list(TRANSFORM arg_USES PREPEND "thawslip::")
    target_link_libraries(thawslip_${name}
        PUBLIC ${arg_USES}
        PRIVATE ${arg_LIBRARIES} fmt::fmt $<BUILD_INTERFACE:thawslip_warnings>)
    target_precompile_headers(thawslip_${name} REUSE_FROM thawslip_precompiled)
    set_property(GLOBAL APPEND PROPERTY THAWSLIP_LAYERS ${name})
endfunction()

# thawslip_embed(<target> <file> <symbol>)
# Compiles a text file into the target as `extern const std::string_view thawslip::<symbol>`.
function(thawslip_embed target file symbol)
    get_filename_component(path "${file}" ABSOLUTE)
    file(READ "${path}" text)
    set(generated "${CMAKE_CURRENT_BINARY_DIR}/${symbol}.cpp")
    file(CONFIGURE OUTPUT "${generated}" @ONLY CONTENT
[[// Made from @file@ by thawslip_embed.
#include <string_view>
namespace thawslip {
extern const std::string_view @symbol@;
const std::string_view @symbol@{R"thawslip(@text@)thawslip"};
} // namespace thawslip
]])
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS "${path}")
    target_sources(${target} PRIVATE "${generated}")
endfunction()

# thawslip_link_data(<folder>)
# A program looks for its files in ../share/thawslip, seen from where it stands, built or installed:
# no path of the machine it was built on is in it. Makes share/thawslip in a folder of the build.
function(thawslip_link_data folder)
    file(MAKE_DIRECTORY "${folder}/share/thawslip")
    foreach(data fonts layouts)
        file(CREATE_LINK "${PROJECT_SOURCE_DIR}/${data}" "${folder}/share/thawslip/${data}" SYMBOLIC)
    endforeach()
endfunction()
