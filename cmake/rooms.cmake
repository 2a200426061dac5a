# A room is one library that can include only the rooms it links. Headers are reached as "room/header.hpp"
# through one include folder per room, so a room that is not linked cannot be found by the compiler.

add_library(beegarth_warnings INTERFACE)
target_compile_options(beegarth_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Werror
  -Wno-missing-field-initializers  # designated initialisers leave the rest at their defaults on purpose
  -ffp-contract=off)  # the same bits on every path: no fused multiply-add
if(CMAKE_CXX_COMPILER_ID STREQUAL GNU)
  # GCC 12 at -O3: false positives on joining strings (GCC bug 105651)
  target_compile_options(beegarth_warnings INTERFACE -Wno-restrict)
endif()
if(BEEGARTH_SANITIZE)
  # With clang: a second compiler reads everything, and the same objects serve the tests and the fuzzers.
  target_compile_options(beegarth_warnings INTERFACE
    -fsanitize=address,undefined -Wreserved-identifier -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(beegarth_warnings INTERFACE -fsanitize=address,undefined -fuse-ld=lld)
endif()
# Rooms that hand JSON and text about spend the compiler's time, not the program's: a lower level for them, as
# released and under the sanitizers. The reckoning rooms keep -O3, and -O1 under the sanitizers.
set(rooms_of_faces garth http draw)
set(quick_to_compile -O1)
if(BEEGARTH_SANITIZE)
  set(quick_to_compile -O0)
  list(APPEND rooms_of_faces book lines duty)  # large to compile, and their tests are quick all the same
endif()
set(fuzzed_rooms base entries book garth)  # where the readers are; only these tell a fuzzer which ways it has been

# beegarth_room(name FOLDER path [LINKS rooms...] [PRIVATE outside libraries...])
function(beegarth_room name)
  cmake_parse_arguments(ROOM "" "FOLDER" "LINKS;PRIVATE" ${ARGN})
  set(folder ${CMAKE_SOURCE_DIR}/src/${ROOM_FOLDER})
  set(faces ${CMAKE_BINARY_DIR}/rooms/${name})
  file(MAKE_DIRECTORY ${faces})
  file(CREATE_LINK ${folder} ${faces}/${name} SYMBOLIC)
  file(GLOB_RECURSE sources CONFIGURE_DEPENDS ${folder}/*.cpp)
  if(sources)
    add_library(${name} STATIC ${sources})
    target_include_directories(${name} PUBLIC ${faces})
    target_link_libraries(${name} PUBLIC ${ROOM_LINKS} PRIVATE ${ROOM_PRIVATE} beegarth_warnings)
    if(BEEGARTH_TOGETHER)
      # Most of the time goes into what the files all include. ./test --long reads each by itself.
      set_target_properties(${name} PROPERTIES UNITY_BUILD ON UNITY_BUILD_BATCH_SIZE 8)
      # The calculations name their parts alike.
      set(alone ${sources})
      list(FILTER alone INCLUDE REGEX "/calc/")
      set_source_files_properties(${alone} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
    endif()
    if(BEEGARTH_TOGETHER AND name STREQUAL garth)
      target_precompile_headers(garth PRIVATE <nlohmann/json.hpp> <fmt/format.h> <garth/gates/gates.hpp>
        <garth/tables/tables.hpp> <entries/fields.hpp>)
    endif()
    if(BEEGARTH_SANITIZE AND name IN_LIST fuzzed_rooms)
      target_compile_options(${name} PRIVATE -fsanitize=fuzzer-no-link)
    endif()
    if(name IN_LIST rooms_of_faces AND NOT CMAKE_BUILD_TYPE STREQUAL Debug)
      target_compile_options(${name} PRIVATE ${quick_to_compile})
    endif()
  else()
    add_library(${name} INTERFACE)
    target_include_directories(${name} INTERFACE ${faces})
    target_link_libraries(${name} INTERFACE ${ROOM_LINKS})
  endif()
endfunction()
