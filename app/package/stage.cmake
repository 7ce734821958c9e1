# CPack runs this between installing and packing. Folders made on the way have the permissions of whoever builds: they get
# Debian's. The program loses what dh_strip takes away.
file(CHMOD_RECURSE ${CPACK_TEMPORARY_DIRECTORY}/usr DIRECTORY_PERMISSIONS
  OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
execute_process(
  COMMAND strip --remove-section=.comment --remove-section=.note ${CPACK_TEMPORARY_DIRECTORY}/usr/bin/stillbay
  COMMAND_ERROR_IS_FATAL ANY)
