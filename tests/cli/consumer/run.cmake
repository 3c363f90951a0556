# Installs the build under BUILD into a folder of its own, builds the consumer against that, runs it
# on DESIGN, and compares what it prints with EXPECTED.
foreach(name BUILD SOURCE DESIGN EXPECTED COMPILER GENERATOR)
    if(NOT DEFINED ${name})
        message(FATAL_ERROR "${name} is not given")
    endif()
endforeach()
set(work ${BUILD}/consumer)
file(REMOVE_RECURSE ${work})

function(run)
    execute_process(COMMAND ${ARGV} COMMAND_ERROR_IS_FATAL ANY OUTPUT_QUIET)
endfunction()

run(${CMAKE_COMMAND} --install ${BUILD} --prefix ${work}/prefix)
run(${CMAKE_COMMAND} -S ${SOURCE} -B ${work}/build -G ${GENERATOR}
    -DCMAKE_PREFIX_PATH=${work}/prefix -DCMAKE_BUILD_TYPE=Release
    -DCMAKE_CXX_COMPILER=${COMPILER} -DCMAKE_CXX_FLAGS=${FLAGS})
run(${CMAKE_COMMAND} --build ${work}/build)

execute_process(COMMAND ${work}/build/consumer ${DESIGN}
    OUTPUT_VARIABLE printed OUTPUT_STRIP_TRAILING_WHITESPACE COMMAND_ERROR_IS_FATAL ANY)
if(NOT printed MATCHES "${EXPECTED}")
    message(FATAL_ERROR "The consumer printed \"${printed}\", not \"${EXPECTED}\".")
endif()

foreach(file bin/coilwright share/man/man1/coilwright.1
        share/bash-completion/completions/coilwright share/coilwright/schedule.schema.json
        share/coilwright/take-off.schema.json share/coilwright/checks.schema.json)
    if(NOT EXISTS ${work}/prefix/${file})
        message(FATAL_ERROR "Not installed: ${file}")
    endif()
endforeach()
