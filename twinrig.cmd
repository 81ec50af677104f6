@echo off
rem Starts twinrig: finds Java, builds the program when it is missing, and passes the arguments on. Sources that
rem have changed since are built anew when the folder .launcher is deleted.
setlocal
set "HOME_DIR=%~dp0"
set "BUILDS=%HOME_DIR%.launcher"
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

call :find
if exist "%JAR%" goto :built
set "MAVEN="
for %%X in (mvn.cmd) do set "MAVEN=%%~$PATH:X"
if defined MAVEN goto :build
echo twinrig: the program is not built and there is no Maven here; install Maven 3.8 or newer 1>&2
exit /b 1
:build
echo Building twinrig; this is done once and takes a few minutes. 1>&2
rem Each build has a folder of its own, and is named in "current" when it is whole: two at once do not meet.
if not exist "%BUILDS%" mkdir "%BUILDS%"
:draw
set "NAME=%RANDOM%%RANDOM%"
set "NEW=%BUILDS%\%NAME%"
if exist "%NEW%" goto :draw
mkdir "%NEW%" 2>nul && goto :drawn
if exist "%NEW%" goto :draw
echo twinrig: the folder %NEW% cannot be made; build the program as the owner of this checkout 1>&2
exit /b 1
:drawn
pushd "%HOME_DIR%"
call "%MAVEN%" -q -B -Plauncher,quick "-Dtwinrig.target=%NEW%" package >"%BUILDS%\build-%NAME%.log" 2>&1
popd
if exist "%NEW%\twinrig.jar" goto :whole
type "%BUILDS%\build-%NAME%.log" 1>&2
echo twinrig: the build failed; all of it stands in %BUILDS%\build-%NAME%.log 1>&2
exit /b 1
:whole
echo %NAME%>"%BUILDS%\current-%NAME%"
move /y "%BUILDS%\current-%NAME%" "%BUILDS%\current" >nul
call :find
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

:find
rem The jar of the last whole build.
set "PROGRAM=none"
if exist "%BUILDS%\current" set /p PROGRAM=<"%BUILDS%\current"
set "JAR=%BUILDS%\%PROGRAM%\twinrig.jar"
exit /b 0
