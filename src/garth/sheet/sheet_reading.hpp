// What was written in the boxes of one set becomes entries. Private to the keying-in of sheets.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/expected.hpp"
#include "book/book.hpp"
#include "garth/sheet/keyed_sheet.hpp"

namespace beegarth::garth {

// A draft with the boxes it was made of: a field's name, and the box that it was read from.
struct DraftOfBoxes {
  book::Draft draft;
  std::map<std::string, std::string> box_of_field;
  std::string first_box;
};

// A Problem's `where` is the name of the box. `values` holds what was written, by the name of the box,
// nothing empty.
Expected<std::vector<DraftOfBoxes>> drafts_of_set(const std::string& set, const FrameToKeyIn& frame,
                                                  const SheetToKeyIn& sheet,
                                                  const std::map<std::string, std::string>& values);

}  // namespace beegarth::garth
