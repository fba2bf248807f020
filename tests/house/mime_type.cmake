# The MIME type's file gives the suffix to the type in a database made from it.
file(REMOVE_RECURSE ${FOLDER})
file(MAKE_DIRECTORY ${FOLDER}/packages)
file(COPY ${SOURCE} DESTINATION ${FOLDER}/packages)
execute_process(COMMAND ${PROGRAM} ${FOLDER} COMMAND_ERROR_IS_FATAL ANY)
file(READ ${FOLDER}/globs2 globs)
if(NOT globs MATCHES "50:application/x-stayalight:\\*\\.stayalight\n")
  message(FATAL_ERROR "The suffix .stayalight has no type: ${globs}")
endif()
