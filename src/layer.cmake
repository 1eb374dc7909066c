# What every target is compiled with, and how a folder of src/ becomes a library.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
if(NOT CMAKE_BUILD_TYPE AND NOT CMAKE_CONFIGURATION_TYPES)
    set(CMAKE_BUILD_TYPE Release)
endif()

if(BUILD_SHARED_LIBS)
    set(CMAKE_POSITION_INDEPENDENT_CODE ON)
endif()

include(GNUInstallDirs)
set(CMAKE_FIND_PACKAGE_TARGETS_GLOBAL ON) # what a layer finds, the whole library links
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
    $<$<BOOL:${THAWSLIP_UNITY}>:-Wno-shadow> # a file's own name is another's in the same heap
    $<$<BOOL:${THAWSLIP_WERROR}>:-Werror>)

# A seventh of the time that GCC takes goes to tidying a memory that is not short. It changes nothing of
# what is made.
add_compile_options($<$<CXX_COMPILER_ID:GNU>:--param=ggc-min-heapsize=600000>)

# Clang's sanitizers come with libFuzzer's eyes: the suite and the fuzzing targets share their objects.
if(THAWSLIP_SANITIZE)
    # Whoever follows a null pointer ends there anyway; to look before each step takes a fourth of the
    # time that these builds take.
    set(sanitizers -fsanitize=address,undefined -fno-sanitize=null,alignment,vptr,object-size)
    add_compile_options(${sanitizers} $<$<CXX_COMPILER_ID:Clang>:-fsanitize=fuzzer-no-link>
                        -fno-sanitize-recover=undefined -fno-omit-frame-pointer)
    add_link_options(${sanitizers})
endif()

# What nearly every file includes, read once: half of the time that compiling took was spent on these.
# A file still includes all that it uses: CMAKE_DISABLE_PRECOMPILE_HEADERS=ON says what is missing.
add_library(thawslip_precompiled OBJECT "${CMAKE_CURRENT_LIST_DIR}/precompiled.cpp")
target_link_libraries(thawslip_precompiled PRIVATE fmt::fmt thawslip_warnings)
target_precompile_headers(thawslip_precompiled PRIVATE
    <algorithm> <array> <chrono> <cmath> <filesystem> <fstream> <functional> <map> <memory> <optional>
    <set> <span> <string> <string_view> <variant> <vector> <fmt/format.h>)

# thawslip_compile_in_heaps(<target> <whose precompiled headers it shares> [<file compiled alone>...])
function(thawslip_compile_in_heaps target precompiled)
    target_precompile_headers(${target} REUSE_FROM ${precompiled})
    set_target_properties(${target} PROPERTIES UNITY_BUILD ${THAWSLIP_UNITY} UNITY_BUILD_BATCH_SIZE 20)
    set_source_files_properties(${ARGN} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
endfunction()

# thawslip_layer(<name> SOURCES <file>... [USES <layer>...] [LIBRARIES <third-party target>...]
#                [ALONE <file>...] [LIGHT] [DOOR])
# One folder of src/ as one static library. What a layer includes from a third party is private
# to it: no other folder sees those headers. What stands under ALONE has names that other files of the
# layer have too, each for itself, and is not compiled in a heap with them. LIGHT: it waits for disks,
# printers and people, or computes so little that the optimiser takes longer than it saves. DOOR: it serves
# the program alone, and is no part of the library for others.
function(thawslip_layer name)
    cmake_parse_arguments(PARSE_ARGV 1 arg "LIGHT;DOOR" "" "SOURCES;USES;LIBRARIES;ALONE")
    add_library(thawslip_${name} STATIC ${arg_SOURCES})
    add_library(thawslip::${name} ALIAS thawslip_${name})
    target_compile_features(thawslip_${name} PUBLIC cxx_std_20)
    target_include_directories(thawslip_${name} PUBLIC "${PROJECT_SOURCE_DIR}/src")
    list(TRANSFORM arg_USES PREPEND "thawslip::")
    target_link_libraries(thawslip_${name}
        PUBLIC ${arg_USES}
        PRIVATE ${arg_LIBRARIES} fmt::fmt thawslip_warnings)
    thawslip_compile_in_heaps(thawslip_${name} thawslip_precompiled ${arg_ALONE})
    if(arg_LIGHT)
        target_compile_options(thawslip_${name} PRIVATE ${THAWSLIP_LIGHT_FLAGS})
    endif()
    if(NOT arg_DOOR)
        set_property(GLOBAL APPEND PROPERTY THAWSLIP_LAYERS ${name})
        set_property(GLOBAL APPEND PROPERTY THAWSLIP_LIBRARIES ${arg_LIBRARIES})
    endif()
endfunction()

# thawslip_maker(<name> SOURCES <file>... USES <layer>... [ALONE <file>...])
# A program that makes files while the others are built.
function(thawslip_maker name)
    cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "SOURCES;USES;ALONE")
    add_executable(${name} ${arg_SOURCES})
    list(TRANSFORM arg_USES PREPEND "thawslip::")
    target_link_libraries(${name} PRIVATE ${arg_USES} fmt::fmt thawslip_warnings)
    thawslip_compile_in_heaps(${name} thawslip_precompiled ${arg_ALONE})
    target_compile_options(${name} PRIVATE ${THAWSLIP_LIGHT_FLAGS})
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
