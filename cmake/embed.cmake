# beegarth_embed(target accessor files...): compiles files into `target` and defines the function `accessor`
# (a qualified name that returns a span of EmbeddedFile), by the assembler's .incbin, so that size costs nothing.
function(beegarth_embed target header namespace accessor root)
  set(files ${ARGN})
  list(SORT files)
  string(MAKE_C_IDENTIFIER ${target}_${accessor} stem)
  set(assembly ${CMAKE_CURRENT_BINARY_DIR}/${stem}.S)
  set(source ${CMAKE_CURRENT_BINARY_DIR}/${stem}.cpp)
  set(asm ".section .rodata\n")
  set(externs "")
  set(rows "")
  set(index 0)
  foreach(file ${files})
    file(RELATIVE_PATH path ${root} ${file})
    set(symbol ${stem}_${index})
    string(APPEND asm ".global ${symbol}\n${symbol}:\n.incbin \"${file}\"\n.global ${symbol}_end\n${symbol}_end:\n.byte 0\n")
    string(APPEND externs "extern const char ${symbol}[];\nextern const char ${symbol}_end[];\n")
    string(APPEND rows "      {\"${path}\", {${symbol}, static_cast<std::size_t>(${symbol}_end - ${symbol})}},\n")
    math(EXPR index "${index} + 1")
  endforeach()
  string(APPEND asm ".section .note.GNU-stack,\"\",%progbits\n")
  file(CONFIGURE OUTPUT ${assembly} CONTENT "${asm}" @ONLY)
  file(CONFIGURE OUTPUT ${source} CONTENT
"#include \"${header}\"
#include <vector>
extern \"C\" {
${externs}}
namespace ${namespace} {
std::span<const EmbeddedFile> ${accessor}() {
  static const std::vector<EmbeddedFile> files{
${rows}  };
  return files;
}
}
" @ONLY)
  target_sources(${target} PRIVATE ${assembly} ${source})
  set_source_files_properties(${assembly} PROPERTIES OBJECT_DEPENDS "${files}")
endfunction()
