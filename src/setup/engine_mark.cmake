# A mark of everything that decides where a part is laid: the sources of nest/, geometry/ and units/, the compiler and its options.
#   cmake -DTOP=… -DOUT=… -DCOMPILER=… -P engine_mark.cmake
file(GLOB sources "${TOP}/src/nest/*" "${TOP}/src/geometry/*" "${TOP}/src/units/*")
list(SORT sources)
set(all "${COMPILER}\n")
foreach(source IN LISTS sources)
  file(SHA256 "${source}" mark)
  get_filename_component(name "${source}" NAME)
  string(APPEND all "${name} ${mark}\n")
endforeach()
string(SHA256 mark "${all}")
file(WRITE "${OUT}" "#include \"nest/lay_store.h\"
namespace gownsheaf::nest {
std::string_view engine_mark() { return \"${mark}\"; }
}  // namespace gownsheaf::nest
")
