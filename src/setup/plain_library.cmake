# Of libraries without a CMake package on Debian 12: plain_library(TARGET HEADER NAME...) makes TARGET of the first NAME that is found.
function(plain_library target header)
  string(MAKE_C_IDENTIFIER "${target}" name)
  find_path(${name}_INCLUDE_DIR ${header} REQUIRED)
  find_library(${name}_LIBRARY NAMES ${ARGN} REQUIRED)
  mark_as_advanced(${name}_INCLUDE_DIR ${name}_LIBRARY)
  add_library(${target} UNKNOWN IMPORTED)
  set_target_properties(${target} PROPERTIES IMPORTED_LOCATION "${${name}_LIBRARY}" INTERFACE_INCLUDE_DIRECTORIES "${${name}_INCLUDE_DIR}")
endfunction()
