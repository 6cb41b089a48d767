"""Settings for running. Every one that can be changed is an environment variable; README.md lists them all."""

from datetime import timedelta
from pathlib import Path

from config import env

BASE_DIR = Path(__file__).resolve().parent.parent
VAR_DIR = env.folder("COOKOUT_VAR_DIR", BASE_DIR / ".var")

DEBUG = env.flag("COOKOUT_DEBUG", default=False)
SECRET_KEY = env.secret("COOKOUT_SECRET_KEY", VAR_DIR / "secret-key")
BASE_URL = env.web_address("COOKOUT_BASE_URL", "http://localhost:8000")
# Links that are handed on need the public address; where none is set, a demo's own port is right.
BASE_URL_IS_SET = env.is_set("COOKOUT_BASE_URL")
ALLOWED_HOSTS = env.listed("COOKOUT_ALLOWED_HOSTS", ("localhost", "127.0.0.1", "[::1]"))
CSRF_TRUSTED_ORIGINS = [BASE_URL]

# What a plan asked for from a page may use; the command `plan` has options of the same names.
COOKOUT_PLAN_SECONDS = env.number("COOKOUT_PLAN_SECONDS", 20.0, least=0.1, most=3000.0)
COOKOUT_PLAN_WORKERS = env.whole("COOKOUT_PLAN_WORKERS", 2, least=1, most=64)
COOKOUT_PLAN_SEED = env.whole("COOKOUT_PLAN_SEED", 1, least=0, most=2**31 - 1)

# The command `demo` turns this on in its own process; only then does its sign-in link open anything.
COOKOUT_DEMO = False
COOKOUT_EXAMPLES = BASE_DIR / "fixtures" / "events"
COOKOUT_STARTER_RECIPES = BASE_DIR / "fixtures" / "recipes"

INSTALLED_APPS = [
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "whitenoise.runserver_nostatic",
    "django.contrib.staticfiles",
    "django.forms",
    "axes",
    "django_htmx",
    "csp",
    "cookout.store",
    "cookout.web",
    "cookout.jobs",
]

# A recipe of sixty steps is one page of fields; a saved page that a recipe is read from may be pasted whole.
DATA_UPLOAD_MAX_NUMBER_FIELDS = 4000
DATA_UPLOAD_MAX_MEMORY_SIZE = 10_000_000

MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "csp.middleware.CSPMiddleware",
    "django.middleware.gzip.GZipMiddleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.locale.LocaleMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "cookout.web.preferences.PreferencesMiddleware",
    "axes.middleware.AxesMiddleware",
]

ROOT_URLCONF = "config.urls"
WSGI_APPLICATION = "config.wsgi.application"
ASGI_APPLICATION = "config.asgi.application"

TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
            ],
        },
    },
]

FORM_RENDERER = "cookout.web.forms.rendering.FormRenderer"

DATABASES = {"default": env.database("COOKOUT_DATABASE_URL", VAR_DIR / "cookout.sqlite3")}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

AUTH_USER_MODEL = "store.User"
LOGIN_URL = "sign-in"
LOGIN_REDIRECT_URL = "start"
PASSWORD_HASHERS = [
    "django.contrib.auth.hashers.Argon2PasswordHasher",
    "django.contrib.auth.hashers.PBKDF2PasswordHasher",
]
AUTH_PASSWORD_VALIDATORS = [
    {"NAME": "django.contrib.auth.password_validation.UserAttributeSimilarityValidator"},
    {"NAME": "django.contrib.auth.password_validation.MinimumLengthValidator", "OPTIONS": {"min_length": 10}},
    {"NAME": "django.contrib.auth.password_validation.CommonPasswordValidator"},
]

# Whoever types a wrong password too often waits, by address and account together: neither can lock out the other.
AUTHENTICATION_BACKENDS = ["axes.backends.AxesStandaloneBackend", "django.contrib.auth.backends.ModelBackend"]
AXES_FAILURE_LIMIT = 5
AXES_COOLOFF_TIME = timedelta(minutes=15)
AXES_LOCKOUT_PARAMETERS = [["username", "ip_address"]]
AXES_RESET_ON_SUCCESS = True
AXES_LOCKOUT_TEMPLATE = "cookout/locked_out.html"
AXES_CLIENT_IP_CALLABLE = "cookout.web.visitors.address_of"
AXES_USERNAME_CALLABLE = "cookout.web.visitors.account_of"
AXES_DISABLE_ACCESS_LOG = True
AXES_VERBOSE = False
SILENCED_SYSTEM_CHECKS = ["axes.W006"]
PASSWORD_RESET_TIMEOUT = 24 * 3600

COOKOUT_SIGN_UP = env.flag("COOKOUT_SIGN_UP", default=False)
COOKOUT_KEEP_DELETED_DAYS = env.whole("COOKOUT_KEEP_DELETED_DAYS", 14, least=0, most=3650)
COOKOUT_BEHIND_PROXY = env.flag("COOKOUT_BEHIND_PROXY", default=False)

# Without a mail server nothing is sent; pages that would send say so instead.
_MAIL = env.mail("COOKOUT_MAIL_URL")
COOKOUT_SENDS_MAIL = bool(_MAIL)
EMAIL_BACKEND = f"django.core.mail.backends.{'smtp' if _MAIL else 'dummy'}.EmailBackend"
EMAIL_TIMEOUT = 10
DEFAULT_FROM_EMAIL = env.text("COOKOUT_MAIL_FROM", "cookout@localhost")
globals().update(_MAIL)

LANGUAGE_CODE = "en"
LANGUAGES = [("en", "English"), ("es", "Español")]
FORMAT_MODULE_PATH = ["cookout.web.formats"]
LOCALE_PATHS = [BASE_DIR / "cookout" / "web" / "locale"]
USE_I18N = True
USE_TZ = True
TIME_ZONE = "UTC"

# Files are served from where they lie; there is no step that collects them (DEVELOPERS.md, decision 5).
STATIC_URL = "/static/"
WHITENOISE_USE_FINDERS = True
WHITENOISE_AUTOREFRESH = DEBUG
WHITENOISE_ALLOW_ALL_ORIGINS = False

# The scheme of the public address decides whether cookies and pages keep to HTTPS.
SERVED_BY_HTTPS = BASE_URL.startswith("https://")
SESSION_COOKIE_SECURE = SERVED_BY_HTTPS
SESSION_COOKIE_SAMESITE = "Lax"
CSRF_COOKIE_SECURE = SERVED_BY_HTTPS
CSRF_COOKIE_SAMESITE = "Lax"
SECURE_SSL_REDIRECT = SERVED_BY_HTTPS
SECURE_HSTS_SECONDS = 30 * 24 * 3600 if SERVED_BY_HTTPS else 0
SECURE_CONTENT_TYPE_NOSNIFF = True
SECURE_REFERRER_POLICY = "same-origin"
SECURE_CROSS_ORIGIN_OPENER_POLICY = "same-origin"
X_FRAME_OPTIONS = "DENY"
if COOKOUT_BEHIND_PROXY:
    SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https")

CONTENT_SECURITY_POLICY = {
    "DIRECTIVES": {
        "default-src": ["'none'"],
        "script-src": ["'self'"],
        "style-src": ["'self'"],
        "img-src": ["'self'"],
        "connect-src": ["'self'"],
        "form-action": ["'self'"],
        "base-uri": ["'none'"],
        "frame-ancestors": ["'none'"],
    },
}

# Without a broker nothing is ever sent to the queue: tasks run in a thread of the process (cookout.jobs.apps).
COOKOUT_REDIS_URL = env.redis("COOKOUT_REDIS_URL")
CELERY_BROKER_URL = COOKOUT_REDIS_URL or "memory://"
# Attempts are counted in the cache; with several processes they must share it.
if COOKOUT_REDIS_URL:
    CACHES = {
        "default": {
            "BACKEND": "django.core.cache.backends.redis.RedisCache",
            "LOCATION": COOKOUT_REDIS_URL,
            "KEY_PREFIX": "cookout-cache",
        }
    }
CELERY_BROKER_CONNECTION_RETRY_ON_STARTUP = True
CELERY_BROKER_TRANSPORT_OPTIONS = {"visibility_timeout": 3600}
CELERY_TASK_IGNORE_RESULT = True
CELERY_TASK_ACKS_LATE = True
CELERY_TASK_REJECT_ON_WORKER_LOST = True
CELERY_TASK_TIME_LIMIT = 3500
CELERY_WORKER_PREFETCH_MULTIPLIER = 1
CELERY_WORKER_HIJACK_ROOT_LOGGER = False
CELERY_TIMEZONE = "UTC"
CELERY_BEAT_SCHEDULE = {
    "end silent plan runs": {"task": "cookout.end_silent_plan_runs", "schedule": 60.0},
    "forget deleted events": {"task": "cookout.forget_deleted", "schedule": 3600.0},
}
CELERY_BEAT_SCHEDULE_FILENAME = str(VAR_DIR / "beat-schedule")

LOG_LEVEL = env.one_of("COOKOUT_LOG_LEVEL", "INFO", ("DEBUG", "INFO", "WARNING", "ERROR"))
LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "filters": {"secrets": {"()": "config.logs.LeaveOutSecrets"}},
    "formatters": {"line": {"format": "{asctime} {levelname} {name} {message}", "style": "{"}},
    "handlers": {"stderr": {"class": "config.logs.ToStandardError", "formatter": "line", "filters": ["secrets"]}},
    "root": {"handlers": ["stderr"], "level": LOG_LEVEL},
    "loggers": {
        "django": {"handlers": [], "level": LOG_LEVEL, "propagate": True},
        "django.server": {"handlers": [], "level": LOG_LEVEL, "propagate": True},
    },
}
