@echo off
rem Opens Broodtide's page in the browser: double-click it.
setlocal DisableDelayedExpansion
rem A percent sign in the folder's name would be lost on the way through call.
pushd "%~dp0"
call .\broodtide.bat ${page.command}
set "CODE=%ERRORLEVEL%"
popd
if not "%CODE%"=="0" pause
exit /b %CODE%
