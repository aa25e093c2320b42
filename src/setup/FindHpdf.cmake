# libharu ships neither a CMake package nor a .pc file on Debian 12. Makes Hpdf::hpdf.
find_path(HPDF_INCLUDE_DIR hpdf.h)
find_library(HPDF_LIBRARY NAMES hpdf haru)
include(FindPackageHandleStandardArgs)
find_package_handle_standard_args(Hpdf REQUIRED_VARS HPDF_LIBRARY HPDF_INCLUDE_DIR)
if(Hpdf_FOUND AND NOT TARGET Hpdf::hpdf)
  add_library(Hpdf::hpdf UNKNOWN IMPORTED)
  set_target_properties(Hpdf::hpdf PROPERTIES IMPORTED_LOCATION "${HPDF_LIBRARY}"
                        INTERFACE_INCLUDE_DIRECTORIES "${HPDF_INCLUDE_DIR}")
endif()
mark_as_advanced(HPDF_INCLUDE_DIR HPDF_LIBRARY)
