# Installs exactly what the lock file names into TO/node_modules.
file(COPY ${FROM}/package.json ${FROM}/package-lock.json DESTINATION ${TO})
execute_process(COMMAND ${NPM} ci --ignore-scripts --no-audit --no-fund --prefer-offline
  WORKING_DIRECTORY ${TO} RESULT_VARIABLE failed OUTPUT_QUIET ERROR_VARIABLE why)
if(failed)
  message(FATAL_ERROR "the packages of the report's page can't be installed:\n${why}\n"
    "They come from the npm registry the first time and from npm's cache after that. Without a network, fill that cache on another "
    "machine (npm ci in io/report/page) and copy it, or name a mirror (npm config set registry URL).")
endif()
