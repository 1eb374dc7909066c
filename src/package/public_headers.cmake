# Run when installing. Copies the headers of `layers` from `from` to `to`, with
# `#include "layout/stock.h"` become `#include "thawslip/layout/stock.h"`, so that no folder named
# "code" or "base" comes onto anybody's include path. A header that includes a third-party library,
# itself or through another, is our own business and stays here.

cmake_policy(VERSION 3.25)

string(REPLACE ";" "|" any_layer "${layers}")
set(own_include "#include \"((${any_layer})/[a-z_/]+\\.h)\"")

set(waiting "")
set(private "")
foreach(layer IN LISTS layers)
    file(GLOB_RECURSE found RELATIVE "${from}" "${from}/${layer}/*.h")
    foreach(header IN LISTS found)
        file(READ "${from}/${header}" text)
        if(text MATCHES "#include <[^>]*[./]")
            list(APPEND private "${header}")
        else()
            list(APPEND waiting "${header}")
        endif()
    endforeach()
endforeach()

# What includes a private header is private too, until nothing changes any more.
set(known_private 0)
list(LENGTH private now_private)
while(now_private GREATER known_private)
    set(known_private ${now_private})
    foreach(header IN LISTS waiting)
        file(READ "${from}/${header}" text)
        string(REGEX MATCHALL "${own_include}" includes "${text}")
        foreach(include IN LISTS includes)
            string(REGEX REPLACE "${own_include}" "\\1" included "${include}")
            if(included IN_LIST private)
                list(APPEND private "${header}")
                list(REMOVE_ITEM waiting "${header}")
                break()
            endif()
        endforeach()
    endforeach()
    list(LENGTH private now_private)
endwhile()

file(REMOVE_RECURSE "${to}")
foreach(header IN LISTS waiting)
    file(READ "${from}/${header}" text)
    string(REGEX REPLACE "${own_include}" "#include \"thawslip/\\1\"" text "${text}")
    file(WRITE "${to}/${header}" "${text}")
endforeach()
