# What an installation holds, and the Debian package made of it (`cpack` in the build folder). Included after the target
# `stayalight` stands.
include(GNUInstallDirs)

set(desktop ${CMAKE_SOURCE_DIR}/resources/desktop)
install(TARGETS stayalight RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(FILES ${desktop}/stayalight.desktop DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
install(FILES ${desktop}/stayalight.mime.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/mime/packages RENAME stayalight.xml)
install(FILES ${desktop}/stayalight.metainfo.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/metainfo
        RENAME org.stayalight.stayalight.metainfo.xml)
install(FILES ${desktop}/stayalight.svg DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps)
install(FILES ${CMAKE_SOURCE_DIR}/README.md ${desktop}/copyright DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/stayalight)
install(DIRECTORY ${CMAKE_SOURCE_DIR}/samples/ DESTINATION ${CMAKE_INSTALL_DATADIR}/stayalight/samples
        FILES_MATCHING PATTERN "*.stayalight")

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME stayalight)
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "plan which circuits move to a backup subpanel")
set(CPACK_PACKAGE_DESCRIPTION
    "Boards of the main panel and the backup subpanel, on which breakers are dragged from one to the other; load per leg, motor starts, feeder and estimated hours of battery answer at once. Prints panel schedules. The figures are estimates and help to plan; code, listed instructions, inspector and licensed practice decide.")
set(CPACK_PACKAGE_CONTACT "The Stayalight contributors <contributors@stayalight.invalid>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
# The libraries are found by dpkg-shlibdeps; what is loaded at run time it cannot see.
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_DEPENDS "libqt6svg6")
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "qt6-wayland, qt6-translations-l10n")
include(CPack)
