# How this release of Debian or Ubuntu hardens what it packages. How the compiler optimises stays our own choice. The path
# of the sources is mapped away, so that two folders give the same bytes.
find_program(STILLBAY_BUILDFLAGS dpkg-buildflags)
if(NOT STILLBAY_BUILDFLAGS)
  message(FATAL_ERROR "a package needs dpkg-buildflags: run app/setup dpkg-dev file")
endif()
foreach(kind CPPFLAGS CXXFLAGS LDFLAGS)
  execute_process(
    COMMAND ${CMAKE_COMMAND} -E env "DEB_BUILD_MAINT_OPTIONS=hardening=+all optimize=-lto" "DEB_CXXFLAGS_MAINT_STRIP=-g -O2"
      ${STILLBAY_BUILDFLAGS} --get ${kind}
    WORKING_DIRECTORY ${PROJECT_SOURCE_DIR} OUTPUT_VARIABLE flags OUTPUT_STRIP_TRAILING_WHITESPACE
    COMMAND_ERROR_IS_FATAL ANY)
  if(kind STREQUAL LDFLAGS)
    string(APPEND CMAKE_EXE_LINKER_FLAGS " ${flags}")
  else()
    string(APPEND CMAKE_CXX_FLAGS " ${flags}")
  endif()
endforeach()
