@echo off
rem Starts twinrig: builds it when the program is missing, and passes the arguments on.
setlocal
set "HOME_DIR=%~dp0"
set "JAR=%HOME_DIR%target\twinrig.jar"
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
if not exist "%JAR%" (
  echo Building twinrig; this is done once. 1>&2
  pushd "%HOME_DIR%"
  call mvn -q -B -Plauncher package
  popd
)
if not exist "%JAR%" (
  echo twinrig: the build failed 1>&2
  exit /b 1
)
set "LIMIT=1"
if "%~1"=="study" set "LIMIT=4"
if "%~1"=="prove" set "LIMIT=4"
if "%~1"=="prove-features" set "LIMIT=4"
"%JAVA%" -XX:+UseSerialGC -XX:TieredStopAtLevel=%LIMIT% -Xmx400m -Djava.awt.headless=true "-Dtwinrig.home=%HOME_DIR%." %TWINRIG_JAVA_OPTIONS% -jar "%JAR%" %*
exit /b %ERRORLEVEL%
