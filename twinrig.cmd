@echo off
rem Starts twinrig: finds Java, builds the program when it is missing, and passes the arguments on. Sources that
rem have changed since are built anew by "mvn package" only.
setlocal
set "HOME_DIR=%~dp0"
set "JAR=%HOME_DIR%target\twinrig.jar"
set "DIRECTIVES=%HOME_DIR%src\main\launcher\compiler-directives.json"

set "JAVA="
for %%X in (java.exe) do set "JAVA=%%~$PATH:X"
if not defined JAVA_HOME goto :java_looked_for
if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"
:java_looked_for
if defined JAVA goto :java_found
echo twinrig: there is no Java here; install a JDK 17 or newer, or set JAVA_HOME 1>&2
exit /b 1
:java_found

if exist "%JAR%" goto :built
set "MAVEN="
for %%X in (mvn.cmd) do set "MAVEN=%%~$PATH:X"
if defined MAVEN goto :build
echo twinrig: the program is not built and there is no Maven here; install Maven 3.8 or newer 1>&2
exit /b 1
:build
echo Building twinrig; this is done once and takes a few minutes. 1>&2
if not exist "%HOME_DIR%target" mkdir "%HOME_DIR%target"
pushd "%HOME_DIR%"
call "%MAVEN%" -q -B -Plauncher package >"%HOME_DIR%target\launcher-build.log" 2>&1
popd
if exist "%JAR%" goto :built
type "%HOME_DIR%target\launcher-build.log" 1>&2
echo twinrig: the build failed; all of it stands in %HOME_DIR%target\launcher-build.log 1>&2
exit /b 1
:built

rem Short commands start fastest with the quick compiler alone; those that estimate gain from the slower one too.
set "SLOW="
for %%C in (study simulate workbench) do if "%~1"=="%%C" set "SLOW=yes"
set "COMPILER=-XX:TieredStopAtLevel=1"
if not defined SLOW goto :start
set "COMPILER=-XX:TieredStopAtLevel=4"
if exist "%DIRECTIVES%" set COMPILER=-XX:+UnlockDiagnosticVMOptions -XX:-DisplayVMOutput "-XX:CompilerDirectivesFile=%DIRECTIVES%"
:start
rem TWINRIG_JAVA_OPTIONS may hold further options for Java, such as -Xmx2g.
"%JAVA%" -XX:+UseSerialGC %COMPILER% -Xmx400m -Djava.awt.headless=true "-Dtwinrig.home=%HOME_DIR%." %TWINRIG_JAVA_OPTIONS% -jar "%JAR%" %*
exit /b %ERRORLEVEL%
