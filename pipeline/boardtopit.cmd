@echo off
rem Runs Board to Pit on Windows; builds it first when it is not built. After a change of the sources: mvn clean.
rem Needs a JDK 17 or newer, and Maven for building. JAVA_HOME is respected.
setlocal
set "pipeline=%~dp0"
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java"
"%java%" --version >nul 2>&1
if errorlevel 1 (
    echo error: a JDK, version 17 or newer, is needed; install one or set JAVA_HOME 1>&2
    exit /b 2
)
if exist "%pipeline%target\built-by-launcher" goto run
where mvn >nul 2>&1
if errorlevel 1 (
    echo error: Maven, mvn, is missing: it is needed to build the program 1>&2
    exit /b 2
)
echo Building the program; the first time this takes some minutes ... 1>&2
pushd "%pipeline%.."
call mvn -q -B -ntp -Dstyle.color=never -Dmaven.test.skip=true package 1>&2
if errorlevel 1 (
    popd
    echo error: the program cannot be built 1>&2
    exit /b 2
)
popd
type nul > "%pipeline%target\built-by-launcher"
:run
"%java%" -Xmx512m -XX:+UseSerialGC -Djava.awt.headless=true -Dfile.encoding=UTF-8 -Djdk.console=java.base "-Dboardtopit.home=%pipeline%.." -cp "%pipeline%target\boardtopit-pipeline.jar;%pipeline%target\lib\*" org.boardtopit.cli.Main %*
exit /b %errorlevel%
